"""What an oven, its sensor and its supply do, worked out from physics."""
