"""What the job takes: measured, with allowances, in whole units and packs; what it costs at the user's own prices."""
