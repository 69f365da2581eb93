from triage.errors import DamagedLog, DatabaseError, LogReadError, RulebookError, SignalMappingError
from triage.logs.options import ReadOptions
from ui.presenters.refusal import describe_refusal
from ui.state.opening import OpenOrder


def test_file_place_reason_and_hint() -> None:
    error = DamagedLog("no row holds a number", file="a.csv", place="line 12", hint="Record again.")
    refusal = describe_refusal(error, OpenOrder(("a.csv",)))
    assert (refusal.file, refusal.place, refusal.hint) == ("a.csv", "line 12", "Record again.")
    assert refusal.reason == "No row holds a number."
    assert refusal.offers == frozenset()


def test_an_error_without_a_file_names_what_was_opened() -> None:
    assert describe_refusal(DamagedLog("empty"), OpenOrder(("a.csv", "b.csv"))).file == "a.csv, b.csv"


def test_an_uncertain_mapping_offers_database_and_signals() -> None:
    refusal = describe_refusal(
        SignalMappingError("unclear", candidates=("A.x", "A.y")), OpenOrder(("a.blf",))
    )
    assert refusal.offers == {"mapping"}
    assert refusal.candidates == ("A.x", "A.y")
    assert describe_refusal(SignalMappingError("frames"), OpenOrder(("a.blf",))).offers == {"database"}


def test_a_bad_database_offers_another_one() -> None:
    assert describe_refusal(DatabaseError("not a DBC", file="car.dbc"), OpenOrder(("a.blf",))).offers == {
        "database"
    }


def test_a_defect_is_said_to_be_one() -> None:
    refusal = describe_refusal(ZeroDivisionError("division by zero"), OpenOrder(("a.csv",)))
    assert "ZeroDivisionError: division by zero" in refusal.reason
    assert "defect of the program" in refusal.hint


def test_too_little_memory_is_no_defect() -> None:
    refusal = describe_refusal(MemoryError(), OpenOrder(("a.csv",)))
    assert "memory" in refusal.reason
    assert "defect" not in refusal.hint


def test_options_of_the_command_line_become_fields() -> None:
    hint = "State the rolling radius in metres with --tyre-radius, for example --tyre-radius 0.312."
    refusal = describe_refusal(LogReadError("rad/s", hint=hint), OpenOrder(("a.csv",)))
    assert refusal.offers == {"radius"}
    assert "--" not in refusal.hint
    both = describe_refusal(
        SignalMappingError("units", candidates=("a", "b"), hint="--map or --unit"), OpenOrder(("a.csv",))
    )
    assert both.offers == {"mapping", "unit"}


def test_wheels_cannot_be_assigned_without_names_to_choose_from() -> None:
    assert (
        describe_refusal(LogReadError("no wheels", hint="Use --map."), OpenOrder(("a.csv",))).offers
        == frozenset()
    )


def test_the_rule_book_is_not_the_recordings_fault() -> None:
    refusal = describe_refusal(RulebookError(("causes.toml: x", "checks.toml: y")), OpenOrder(("a.csv",)))
    assert refusal.title == "The rule book cannot be used"
    assert refusal.file == ""
    assert "checks.toml: y" in refusal.reason


def test_a_long_list_of_problems_leaves_the_buttons_in_sight() -> None:
    problems = tuple(f"causes.toml: {number}" for number in range(40))
    lines = describe_refusal(RulebookError(problems), OpenOrder(("a.csv",))).reason.splitlines()
    assert len(lines) == 7
    assert lines[-1] == "... and 34 more"


def test_what_was_answered_is_kept_and_named_without_options() -> None:
    error = SignalMappingError("--map FL=whel_1: there is no such signal", candidates=("wheel_1", "wheel_2"))
    order = OpenOrder(("a.csv",), ReadOptions(mapping={"FL": "whel_1"}))
    refusal = describe_refusal(error, order)
    assert refusal.reason == "FL = whel_1: there is no such signal."
    assert refusal.found == {"FL": "whel_1"}


def test_signs_no_font_has_are_not_shown() -> None:
    refusal = describe_refusal(DatabaseError("bad: \x1b\x00\x7fx", file="car.dbc"), OpenOrder(("a.blf",)))
    assert refusal.reason == "Bad: ···x."
