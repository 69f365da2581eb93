from ui.state.topic import Topic


def test_listeners_are_told_in_order() -> None:
    topic: Topic[int] = Topic()
    told: list[tuple[str, int]] = []
    topic.subscribe(lambda value: told.append(("first", value)))
    topic.subscribe(lambda value: told.append(("second", value)))
    topic.tell(3)
    assert told == [("first", 3), ("second", 3)]


def test_a_listener_that_left_is_not_told() -> None:
    topic: Topic[int] = Topic()
    told: list[int] = []
    leave = topic.subscribe(told.append)
    leave()
    leave()
    topic.tell(1)
    assert told == []


def test_leaving_while_being_told_does_not_skip_the_next() -> None:
    topic: Topic[int] = Topic()
    told: list[int] = []
    leave = topic.subscribe(lambda _value: leave())
    topic.subscribe(told.append)
    topic.tell(1)
    assert told == [1]
