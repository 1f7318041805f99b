"""A mitred hip: the units of both slopes cut to meet, with a soaker to each course, dressed over the hip under both."""

from gaugerod.coverings.double_lap import RandomSlates, SizedSlate
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgesAsk
from gaugerod.edges.soakers import mitred_hip_soakers, soaker_findings
from gaugerod.edges.untold import laid_length
from gaugerod.rules.mitred_hip import mitred_hip
from gaugerod.setting_out.said import counted


def mitred_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """The hip and its soakers; its pitch, that of the flatter slope, against the least. Scope: slate; else a finding."""
    soakers = mitred_hip_soakers(ask, line)
    count = sum(pieces.count for pieces in soakers)
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made="mitred, a soaker to each course",
        run=None,
        clear_mm=None,
        parts=(),
        lead=soakers,
        says=(
            "Cut the units of both slopes to meet in one line over the hip, from wide ones, each nailed twice.",
            f"{counted(count, 'soaker')} of lead, one to each course, dressed over the hip under both slopes.",
            "Wash your hands after handling lead.",
        ),
        findings=(
            mitred_hip(
                where=line.name,
                pitch_deg=min(ask.slope(name).pitch_deg for name in line.slopes),
                slated=isinstance(ask.covering, SizedSlate | RandomSlates),
                edition=ask.edition,
            ),
            *(found for each in soakers for found in soaker_findings(line.name, each, ask.edition)),
        ),
        working=laid_length(line),
    )
