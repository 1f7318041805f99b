"""Cautions that go with every job, and the settings of this browser."""

from urllib.parse import quote

from gaugerod import __version__
from gaugerod.job.cautions import CAUTIONS
from gaugerod.web.asked import UNNAMED, Asked, Light
from gaugerod.web.form import Choice, Field
from gaugerod.web.inside import inside
from gaugerod.web.pages.about.context import AboutContext
from gaugerod.web.reply import Go, Reply, Shown
from gaugerod.web.services import Services

_LIGHTS = {Light.AS_THE_PHONE: "as the phone has it", Light.DAY: "always daylight", Light.NIGHT: "always night"}
_LONGEST_NAME_COUNT = 40


def about_view(_: Services, asked: Asked) -> Reply:
    """Show both, or keep the settings."""
    if asked.posted:
        name = " ".join(asked.form.get("who", "").split())[:_LONGEST_NAME_COUNT]
        cookies = {"who": quote(name, safe="")}
        if asked.form.get("light") in set(Light):
            cookies["light"] = asked.form["light"]
        return Go(to="/about", cookies=cookies)
    context = AboutContext(
        cautions=CAUTIONS,
        version=__version__,
        who=Field(name="who", label="Your name on saves", value="" if asked.who == UNNAMED else asked.who,
                  hint="So that others see who saved. It stays on this machine.", length=False),
        lights=tuple(Choice(value=light.value, label=words) for light, words in _LIGHTS.items()),
        light=asked.light.value,
    )  # fmt: skip
    return Shown(page="about", title="Cautions and settings", context=context)


def light_view(_: Services, asked: Asked) -> Reply:
    """Daylight or night, at once, and back to the page."""
    given = asked.form.get("light", "")
    light = Light(given) if given in set(Light) else Light.AS_THE_PHONE
    return Go(to=inside(asked.form.get("back", ""), otherwise="/"), cookies={"light": light.value})
