"""The passphrase, asked once on each phone or laptop."""

from collections.abc import Callable
from math import ceil

from gaugerod.web.access import Access
from gaugerod.web.asked import Asked
from gaugerod.web.gate.passphrase import fits
from gaugerod.web.inside import inside
from gaugerod.web.pages.sign_in.context import SignInContext, SignOutContext
from gaugerod.web.reply import Go, Reply, Shown
from gaugerod.web.services import Services

_TITLE = "Passphrase"


def sign_in_view(access: Access) -> Callable[[Services, Asked], Reply]:
    """The view of this door."""

    def view(_: Services, asked: Asked) -> Reply:
        to = inside((asked.form if asked.posted else asked.query).get("to", ""), otherwise="/")
        if access.passphrase_hash is None:
            return Go(to=to)
        if not asked.posted:
            return Shown(page="sign_in", title=_TITLE, context=SignInContext(to=to))
        wait_s = access.throttle.ask(asked.address, now_s=access.clock_s())
        if wait_s > 0:
            return _wait(to, seconds_count=ceil(wait_s))
        if fits(asked.form.get("passphrase", ""), kept=access.passphrase_hash):
            access.throttle.right(asked.address)
            return Go(to=to, signed_in=True)
        wrong = "That is not the passphrase. Whoever started the program on the other machine knows it."
        return Shown(page="sign_in", title=_TITLE, context=SignInContext(to=to, wrong=wrong), status=401)

    return view


def _wait(to: str, *, seconds_count: int) -> Shown:
    wrong = f"Too many wrong tries. Wait {seconds_count} second{'' if seconds_count == 1 else 's'}, then try again."
    context = SignInContext(to=to, wrong=wrong)
    return Shown(page="sign_in", title=_TITLE, context=context, status=429, retry_after_count=seconds_count)


def sign_out_view(_: Services, asked: Asked) -> Reply:
    """Ask, then sign out."""
    if asked.posted:
        return Go(to="/sign-in", signed_in=False)
    return Shown(page="sign_out", title="Sign out", context=SignOutContext())
