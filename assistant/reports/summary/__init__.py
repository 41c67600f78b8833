"""The pre-visit summary: a session -> one value in words -> text, Markdown and other forms.

`engineer.py` and `household.py` say what each reader is told; the forms compute nothing.
"""
