"""The command line: says what it can do, runs it, and turns every outcome into an exit status.

0  done, and nothing is outside a rule
1  done, something is outside a rule: the answer says what
2  the input cannot be used: every fault is listed
3  a fault of this program
"""

import argparse
import sys
from collections.abc import Callable, Sequence
from importlib import import_module

from gaugerod import __version__
from gaugerod.basis.errors import GaugerodError, InputRefused

DONE, OUTSIDE, REFUSED, OUR_FAULT = 0, 1, 2, 3

Command = Callable[[argparse.Namespace], int]
_MODULES = {"import": "import_jobs"}  # a word of the language cannot name a module

_ABOUT = """\
Sets out a pitched roof for tiling: from the tape measure and a tile in the hand to every batten and perp,
with what each rule says and a sheet to pin up.

A first roof:
  gaugerod demo                      sets out the roof that comes with the program
  gaugerod coverings                 the generic coverings, to choose from
  gaugerod measure                   a record of your own tile, from a test lay
  gaugerod check-file my-roof.toml   is the job file in order?
  gaugerod set-out my-roof.toml      courses, perps, findings and the sheet
  gaugerod on-roof my-roof.toml --out roof.html
                                     the marks one at a time, in one file for a phone
  gaugerod take-off my-roof.toml     what it takes, and what to order
  gaugerod serve                     the same in a browser, on a laptop or phone
"""

_STATUS = "exit status: 0 nothing outside a rule; 1 something outside a rule; 2 input cannot be used; 3 program fault"


def main(arguments: Sequence[str] | None = None) -> int:  # noqa: PLR0911 - one return for each way to end
    """Run one command and give its exit status."""
    parser = _parser()
    given = parser.parse_args(arguments)
    if given.command is None:
        parser.print_help()
        return DONE
    try:
        return _command(given.command)(given)
    except InputRefused as refused:
        _say_faults(refused)
        return REFUSED
    except GaugerodError as error:
        print(f"gaugerod: {error}", file=sys.stderr)
        return REFUSED
    except BrokenPipeError:
        sys.stderr.close()
        return DONE
    except OSError as error:
        print(
            f"gaugerod: {error.filename}: {error.strerror}. Check the path, and that it may be written.",
            file=sys.stderr,
        )
        return REFUSED
    except KeyboardInterrupt:
        print("gaugerod: stopped", file=sys.stderr)
        return REFUSED
    except Exception as fault:  # noqa: BLE001 - the last door: anything that gets here is our own fault
        print(f"gaugerod: a fault of this program, not of your input: {type(fault).__name__}: {fault}", file=sys.stderr)
        return OUR_FAULT


def _command(name: str) -> Command:
    """The command's own module is read only when it is asked for, so that starting stays quick."""
    module = import_module(f"gaugerod.cli.{_MODULES.get(name, name.replace('-', '_'))}")
    run: Command = module.run
    return run


def _say_faults(refused: InputRefused) -> None:
    count = len(refused.faults)
    print(f"The input cannot be used: {count} fault{'s' if count > 1 else ''}.", file=sys.stderr)
    for fault in refused.faults:
        print(f"  {fault}", file=sys.stderr)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="gaugerod", description=_ABOUT, epilog=_STATUS, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--version", action="version", version=f"gaugerod {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="command")
    _add_set_out(commands.add_parser("set-out", help="set out a job: courses, perps, findings, sheets", epilog=_STATUS))
    _add_demo(commands.add_parser("demo", help="set out the roof that comes with the program", epilog=_STATUS))
    _add_on_roof(commands.add_parser("on-roof", help="one file for a phone: the marks one at a time", epilog=_STATUS))
    _add_take_off(
        commands.add_parser("take-off", help="what the job takes: measured, allowed for, to order", epilog=_STATUS)
    )
    _add_order(commands.add_parser("order", help="what to buy, in packs and in money, as files", epilog=_STATUS))
    _add_record(commands.add_parser("record", help="the record to hand over with the roof, as PDF", epilog=_STATUS))
    _add_coverings(commands.add_parser("coverings", help="list the generic coverings, or show one"))
    _add_measure(commands.add_parser("measure", help="make a record of your own tile from a test lay"))
    _add_check_file(commands.add_parser("check-file", help="check a job file without setting it out"))
    _add_check_roof(
        commands.add_parser("check-roof", help="check a roof as built: laps, leaks, strip-back", epilog=_STATUS)
    )
    _add_read_plan(commands.add_parser("read-plan", help="draft a job file from a plan outline: GeoJSON, DXF"))
    _add_read_roof(commands.add_parser("read-roof", help="draft a job file from a measured roof: CityJSON"))
    _add_backup(commands.add_parser("backup", help="copy all kept jobs to one file, read back and found whole"))
    _add_export(commands.add_parser("export", help="write kept jobs with all their revisions as JSON"))
    _add_import(commands.add_parser("import", help="take in an export, or a job file, as new kept jobs"))
    _add_serve(commands.add_parser("serve", help="the app: jobs in a browser, on this machine or a phone"))
    _add_schema(commands.add_parser("schema", help="print the JSON Schema of the job file, or of the roof file"))
    return parser


def _add_set_out(command: argparse.ArgumentParser) -> None:
    command.description = "Set out a job file (TOML or JSON). Prints the main numbers; --out writes the sheets."
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")
    _add_outputs(command, out_default=None)


def _add_on_roof(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Set out a job file and write the marks as one file for a phone: one at a time, ticked off, read aloud, set out "
        "again from where a batten really is. It needs no signal."
    )
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")
    command.add_argument("--out", metavar="FILE", default="-", help="the HTML file to write; - for standard output")


def _add_take_off(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Set out a job file and take it off: every quantity as it lies on the roof, what is added and why, what to order, "
        "and the count from the cuts beside a flat percentage."
    )
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")
    command.add_argument("--json", metavar="FILE", default=None, help="write it as JSON to FILE; - for standard output")


def _add_order(command: argparse.ArgumentParser) -> None:
    command.description = (
        "What to buy for a job, in whole pieces and packs. With a price list of your own it is costed, with your rates for "
        "the work; what has no price is named and is in no total."
    )
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")
    command.add_argument("--prices", metavar="CSV", default=None, help="your prices and rates, before tax")
    command.add_argument(
        "--blank-prices",
        metavar="FILE",
        default=None,
        help="write the list of this job to fill in; - for standard output",
    )
    command.add_argument(
        "--out",
        metavar="DIR",
        default=None,
        help="write the order here: CSV, JSON, spreadsheet, PDF, and the quotation",
    )
    _add_paper(command)


def _add_record(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Set out a job file and write the record that is handed over with the roof: what was laid, measured, met and "
        "accepted, and what no rule covered."
    )
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")
    command.add_argument("--out", metavar="FILE", required=True, help="the PDF to write")
    _add_paper(command)


def _add_demo(command: argparse.ArgumentParser) -> None:
    command.description = "Set out the demo roof and write its sheets."
    _add_outputs(command, out_default="gaugerod-demo")


def _add_outputs(command: argparse.ArgumentParser, *, out_default: str | None) -> None:
    command.add_argument(
        "--json", metavar="FILE", default=None, help="write the result document to FILE; - for standard output"
    )
    command.add_argument(
        "--out", metavar="DIR", default=out_default, help="write sheets (PDF), drawings (SVG) and result.json here"
    )
    _add_paper(command)


def _add_paper(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--paper", choices=["a4", "a3", "letter"], default="a4", help="paper of the sheets (default: %(default)s)"
    )


def _add_coverings(command: argparse.ArgumentParser) -> None:
    command.add_argument("name", metavar="NAME", nargs="?", default=None, help="show this record whole")


def _add_check_file(command: argparse.ArgumentParser) -> None:
    command.add_argument("job", metavar="JOB", help="the job file, .toml or .json")


def _add_check_roof(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Check a finished or half-finished roof from its measured battens or visible margins: every lap, what is short, "
        "what leaks first, and the least strip-back that cures it, with the new marks. What is uneven by a house tolerance "
        "only is advice, and gives status 0."
    )
    command.add_argument("roof", metavar="ROOF", help="the roof file, .toml or .json")
    _add_outputs(command, out_default=None)


def _add_read_plan(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Draft a job file from the outline of a building on plan. GeoJSON: every polygon is a building. "
        "DXF: every closed polyline. What the file cannot say stands in the draft with a remark."
    )
    command.add_argument("file", metavar="FILE", help="the plan, .geojson, .json or .dxf")
    command.add_argument(
        "--pitch", default=None, help="the pitch of every slope, as the job file writes it: 40, 8 in 12"
    )
    command.add_argument(
        "--unit",
        choices=["degrees", "mm", "cm", "m", "in", "ft"],
        default=None,
        help="what the coordinates are in, where the file does not say (GeoJSON: degrees or m)",
    )
    command.add_argument("--layer", default=None, help="read only this layer of a DXF drawing")
    _add_out(command)


def _add_read_roof(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Draft a job file from a roof measured as planes (CityJSON 1.1 or 2.0, LoD 2): every plane is a slope by its "
        "outline, its edges named from what they meet."
    )
    command.add_argument("file", metavar="FILE", help="the roof, .city.json")
    _add_out(command)


def _add_out(command: argparse.ArgumentParser) -> None:
    command.add_argument("--out", metavar="FILE", default="-", help="the job file to write; - for standard output")


def _add_backup(command: argparse.ArgumentParser) -> None:
    command.description = "Copy all kept jobs to one file while the program may go on; nothing is ever written over."
    command.add_argument("--to", metavar="FILE", default=None, help="default: by the date, in backups beside the jobs")
    _add_data(command)


def _add_export(command: argparse.ArgumentParser) -> None:
    command.description = "Write kept jobs with all their revisions as JSON. Share links are not in it."
    command.add_argument("--to", metavar="FILE", default="-", help="the file to write; - for standard output")
    command.add_argument("--job", metavar="ID", default=None, help="this job only")
    _add_data(command)


def _add_import(command: argparse.ArgumentParser) -> None:
    command.description = "Take in an export or a job file. Every job gets a new id; nothing kept before is touched."
    command.add_argument("file", metavar="FILE", help="an export (JSON), or a job file (.toml or .json)")
    command.add_argument("--by", metavar="NAME", default="command line", help="who takes it in (default: %(default)s)")
    _add_data(command)


def _add_data(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--data",
        metavar="DIR",
        default=None,
        help="folder of the kept jobs (default: GAUGEROD_DATA, or the user's own)",
    )


def _add_serve(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Open the app in a browser. Only this machine can reach it, unless --lan lets others in with a passphrase."
    )
    command.add_argument("--port", type=int, default=8417, help="(default: %(default)s)")
    command.add_argument("--lan", action="store_true", help="let phones in the same network in, with a passphrase")
    command.add_argument("--cert", metavar="FILE", default=None, help="serve over TLS with this certificate")
    command.add_argument("--key", metavar="FILE", default=None, help="the key of that certificate")
    _add_data(command)


def _add_schema(command: argparse.ArgumentParser) -> None:
    command.add_argument("--of", choices=["job", "roof"], default="job", help="of which file (default: %(default)s)")


def _add_measure(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Lay your own tiles out and measure them. With no figures given, it asks for them one by one. "
        "Lengths as you write them: 345, 34.5 cm, 1' 1 5/8\"."
    )
    from gaugerod.cli.measure_figures import FIGURES  # noqa: PLC0415 - light, and only this command needs it

    for figure in FIGURES:
        command.add_argument(figure.flag, dest=figure.field, metavar=figure.metavar, default=None, help=figure.help)
    command.add_argument(
        "--form", choices=["flat", "profiled", "pantile"], default="flat", help="(default: %(default)s)"
    )
    command.add_argument("--material", choices=["clay", "concrete"], default="concrete", help="(default: %(default)s)")
    command.add_argument(
        "--ten-measured",
        choices=["over-all", "edge-to-edge"],
        default="over-all",
        help="ten units over all, or from the first left edge to the eleventh (default: %(default)s)",
    )
    command.add_argument("--half-unit", action="store_true", help="a half-width companion is to be had")
    command.add_argument("--unit-and-a-half", action="store_true", help="a one-and-a-half-width companion is to be had")
    command.add_argument("--bond", choices=["straight", "broken"], default="straight", help="the usual bond")
    command.add_argument("--name", default="own-tile", help="name of the record (default: %(default)s)")
    command.add_argument("--title", default=None, help="what it is called on the sheets")
    command.add_argument("--ask", action="store_true", help="ask for every figure that is not given")


if __name__ == "__main__":
    sys.exit(main())
