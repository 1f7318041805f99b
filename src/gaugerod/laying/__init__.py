"""Every unit on a slope: whole, cut or absent; and which offcut serves which other cut."""
