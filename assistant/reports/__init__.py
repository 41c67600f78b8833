"""What was measured at an oven, drawn and in figures. Every word comes from the caller."""
