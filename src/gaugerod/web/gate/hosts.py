"""Which names the app answers to. A page elsewhere that has its own name pointed at this machine is refused."""

from dataclasses import dataclass
from ipaddress import ip_address

LOOPBACK_NAMES = frozenset({"localhost"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Hosts:
    """The names of this machine. ``reached`` is true when other machines may come in too: by number, or by a name given here."""

    reached: bool
    names: frozenset[str] = LOOPBACK_NAMES

    def allow(self, host: str) -> bool:
        """May a request that names this host come in?

        A number cannot be pointed elsewhere, a name can: so any number does when other machines may come in, but only
        the names that are known to be ours.

        >>> here = Hosts(reached=False)
        >>> [here.allow(host) for host in ("127.0.0.1:8417", "localhost", "[::1]:8417", "roof.example", "192.168.0.7", "")]
        [True, True, True, False, False, False]
        >>> Hosts(reached=True).allow("192.168.0.7:8417")
        True
        """
        name = _bare(host)
        if name in self.names:
            return True
        try:
            address = ip_address(name)
        except ValueError:
            return False
        return address.is_loopback or self.reached


def _bare(host: str) -> str:
    """The host without its port and brackets."""
    if host.startswith("["):
        return host[1:].partition("]")[0]
    return host.partition(":")[0].lower()
