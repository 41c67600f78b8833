from io import StringIO

from assistant.desk.desk import Desk
from assistant.desk.plain import Plain


def test_line_by_line_the_same_is_said_and_done(desk: Desk) -> None:
    out = StringIO()
    Plain(desk, StringIO(".new\n1\n16\nAda\n0700\n4\n.view\n.leave\n"), out).run()
    said = out.getvalue()
    assert "is anybody hurt" in said
    assert "NOT TO BE READ OUT" in said
    assert "\x1b" not in said
    assert desk.call is not None
    assert len(desk.call.conversation.state.answers) == 5


def test_the_end_of_what_is_read_is_the_end_of_the_desk(desk: Desk) -> None:
    Plain(desk, StringIO(".new\n1"), StringIO()).run()
    assert desk.call is not None
    assert list(desk.call.conversation.state.answers) == ["anyone_hurt"]
