"""The ranking against an independent library for exact inference: hard, soft and skipped evidence.

With and without variants of causes.
"""

from __future__ import annotations

import warnings
from collections.abc import Callable, Iterator, Sequence

import numpy as np
import pytest

from triage.corners import CORNERS
from triage.evidence.hypotheses import Finding, Hypothesis
from triage.evidence.posterior import rank_hypotheses
from triage.evidence.rule_tables import Rulebook

with warnings.catch_warnings():
    # Its wrapper warns while it is being initialised; made an error, that ends the process.
    warnings.simplefilter("ignore", DeprecationWarning)
    import pyagrum

MOST_VARIANTS = 3


def dirichlet(rng: np.random.Generator, size: int) -> list[float]:
    share = rng.dirichlet(np.full(size, 0.7)).clip(1e-3)
    return (share / share.sum()).tolist()


def random_book(
    make_book: Callable[..., Rulebook], rng: np.random.Generator, *, with_variants: bool
) -> Rulebook:
    corner_causes = [f"cause{i}" for i in range(rng.integers(1, 5))]
    causes = [*corner_causes, "all-wheels", "no-fault-found", "other"]
    where = ["corner"] * len(corner_causes) + ["vehicle"] * 3
    prior = dirichlet(rng, len(causes))
    variants = {
        cause: dirichlet(rng, int(rng.integers(2, MOST_VARIANTS + 1)))
        for cause in causes
        if with_variants and (cause == "cause0" or rng.random() < 0.6)
    }
    rowable = [
        *causes[:-1],
        *(f"{name}_{i + 1}" for name, share in variants.items() for i in range(len(share))),
    ]

    def rows(width: int) -> dict[str, list[float]]:
        named = ["sound", "other", *(name for name in rowable if rng.random() < 0.7)]
        return {name: dirichlet(rng, width) for name in named}

    return make_book(
        dict(zip(causes, zip(where, prior, strict=True), strict=True)),
        measurements={f"m{i}": ("g", rows(int(rng.integers(2, 6)))) for i in range(4)},
        groups={"g": 1.0},
        variants=variants,
        checks={f"c{i}": (("corner", "vehicle")[i % 2], rows(3)) for i in range(3)},
    )


def random_findings(book: Rulebook, rng: np.random.Generator) -> Iterator[Finding]:
    for source in (*book.measurements, *book.checks):
        scale = book.scale(source)
        assert scale is not None
        for_vehicle = source in book.checks and book.checks[source].where == "vehicle"
        for place in ("vehicle",) if for_vehicle else CORNERS:
            name, size = f"{source}@{place}", len(scale.names)
            kind = rng.choice(["hard", "soft", "skipped"], p=[0.3, 0.3, 0.4])
            if kind != "skipped":
                seen = np.eye(size)[rng.integers(size)] if kind == "hard" else rng.dirichlet(np.ones(size))
                shares = dict(zip(scale.names, seen.tolist(), strict=True))
                yield Finding(name, source, place, "", 1.0, 0.0, "", shares, ())  # type: ignore[arg-type]


def exact_inference(book: Rulebook, findings: Sequence[Finding]) -> dict[Hypothesis, float]:
    """The same question put to a Bayesian network.

    Its nodes: the claim, the unknown corner of ``other``, the variant (hidden, depends on the claim), and
    what was seen (depends on all three).
    """
    net = pyagrum.BayesNet()
    claim = net.add(pyagrum.LabelizedVariable("claim", "", len(book.hypotheses)))
    unknown = net.add(pyagrum.LabelizedVariable("unknown", "", len(CORNERS)))
    variant = net.add(pyagrum.LabelizedVariable("variant", "", MOST_VARIANTS))
    net.addArc(claim, variant)
    net.cpt(claim).fillWith(
        [
            book.causes[one.cause].prior / (1 if one.corner == "vehicle" else len(CORNERS))
            for one in book.hypotheses
        ]
    )
    net.cpt(unknown).fillWith([1 / len(CORNERS)] * len(CORNERS))
    for i, one in enumerate(book.hypotheses):
        shares = list(book.variants.get(one.cause, (1.0,)))
        net.cpt(variant)[{"claim": i}] = shares + [0.0] * (MOST_VARIANTS - len(shares))
    evidence = {}
    for number, finding in enumerate(findings):
        names = list(finding.band_probability)
        node = net.add(pyagrum.LabelizedVariable(f"seen{number}", "", len(names)))
        for parent in (claim, unknown, variant):
            net.addArc(parent, node)
        table = np.array(
            [
                [
                    [row_of(book, finding, one, unknown=corner, number=k + 1) for k in range(MOST_VARIANTS)]
                    for corner in CORNERS
                ]
                for one in book.hypotheses
            ]
        )
        axes = ["claim", "unknown", "variant", f"seen{number}"]
        order = [axes.index(name) for name in reversed(net.cpt(node).names)]
        net.cpt(node)[:] = np.ascontiguousarray(table.transpose(order))
        # soft evidence in the sense of J. Pearl, Probabilistic Reasoning, 1988, 2.2.2: a likelihood per state
        evidence[f"seen{number}"] = list(finding.band_probability.values())
    inference = pyagrum.LazyPropagation(net)
    inference.setEvidence(evidence)
    inference.makeInference()
    found = inference.posterior(claim).toarray()
    return dict(zip(book.hypotheses, found.tolist(), strict=True))


def row_of(book: Rulebook, finding: Finding, claim: Hypothesis, *, unknown: str, number: int) -> list[float]:
    tables = {**book.likelihoods, **{name: check.table for name, check in book.checks.items()}}
    rows = tables[finding.source].rows
    blamed = unknown if claim.cause == "other" else claim.corner
    touched = "vehicle" in (finding.corner, blamed) or blamed == finding.corner
    names = (f"{claim.cause}_{number}", claim.cause, "sound") if touched else ("sound",)
    return list(next(rows[name] for name in names if name in rows))


@pytest.mark.parametrize("with_variants", [False, True], ids=["plain", "variants"])
@pytest.mark.parametrize("number", range(100))
def test_ranking_agrees_with_a_bayesian_network(
    make_book: Callable[..., Rulebook], number: int, with_variants: bool
) -> None:
    rng = np.random.default_rng(number)
    book = random_book(make_book, rng, with_variants=with_variants)
    assert bool(book.variants) == with_variants
    findings = list(random_findings(book, rng))
    ours = {line.hypothesis: line.probability for line in rank_hypotheses(findings, book).ranking}
    theirs = exact_inference(book, findings)
    assert ours.keys() == theirs.keys()
    for hypothesis, share in theirs.items():
        assert ours[hypothesis] == pytest.approx(share, rel=1e-9, abs=1e-12)
