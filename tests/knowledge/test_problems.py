import pytest

from assistant.knowledge.problems import Problem, nearest_name, where_in_file


@pytest.mark.parametrize(
    ("path", "where"),
    [
        ((), "file"),
        (("note",), "note"),
        (("when", 0, "question"), "when[1].question"),
        (("any_of", 1, 2, "is"), "any_of[2][3].is"),
        ((0, "a"), "[1].a"),
        (("",), '""'),
        (("x" * 100,), "x" * 57 + "..."),
    ],
)
def test_a_path_is_shown_with_items_counted_from_one(path, where):
    assert where_in_file(path) == where


@pytest.mark.parametrize(
    ("found", "nearest"),
    [("look cold", "look_cold"), ("LOOK_COLD", "look_cold"), ("lookcold", "look_cold"), ("zebra", None), ("", None)],
)
def test_the_nearest_name_is_one_that_is_alike_enough(found, nearest):
    assert nearest_name(found, ["talk", "look_cold", "daily_use"]) == nearest


def test_problems_sort_by_file_line_and_column():
    places = [("b", 1, 1), ("a", 10, 1), ("a", 2, 5), ("a", 2, 1)]
    problems = sorted(Problem(file, line, column, "note", "x") for file, line, column in places)
    assert [(p.file, p.line, p.column) for p in problems] == [("a", 2, 1), ("a", 2, 5), ("a", 10, 1), ("b", 1, 1)]
