from __future__ import annotations

from PySide6.QtCore import Qt
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from ui.presenters.verdict import build_evidence, build_ranking_rows
from ui.state.opening import Opened
from ui.widgets.evidence_panel import EvidenceModel
from ui.widgets.ranking_panel import RankingModel


def test_ranking_model(qtmodeltester: ModelTester, opened: Opened) -> None:
    model = RankingModel()
    model.set_rows(build_ranking_rows(opened))
    qtmodeltester.check(model)
    assert model.data(model.index(0, 1), Qt.ItemDataRole.DisplayRole) == "Dirt on the encoder"
    assert (
        model.data(model.index(0, 2), Qt.ItemDataRole.AccessibleTextRole)
        == "Front left, Dirt on the encoder, 74 %"
    )
    assert (
        model.data(model.index(0, 1), Qt.ItemDataRole.ToolTipRole)
        == "Dirt or metal dust covers part of the ring."
    )


def test_evidence_model(qtmodeltester: ModelTester, opened: Opened, qtbot: QtBot) -> None:
    model = EvidenceModel()
    model.set_lines(build_evidence(opened.result, 0))
    qtmodeltester.check(model)
    spoken = model.data(model.index(3), Qt.ItemDataRole.AccessibleTextRole)
    assert spoken == "Against, 0.4 bit: No play was felt. (not from the recording)"
