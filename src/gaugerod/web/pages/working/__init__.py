"""How every number was come by."""
