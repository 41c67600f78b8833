"""Another oven than the one belief is computed by: of other parts, other losses, other controls and other spreads.

It shares no code with the project's own oven model, and its faults are written from what such an oven does, not from
the rules' figures. So it shows how belief fares where its model is wrong in structure. It is still a simulation.
"""
