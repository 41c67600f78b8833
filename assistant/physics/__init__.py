"""Pure numbers in, numbers out: what physics, standards and cookery tables say of an oven's parts.

Nothing here knows of ovens asked about, rules or wording. Every quantity's name ends in its unit. Input that can't
be is refused by ValueError, whose text is a plain sentence.
"""
