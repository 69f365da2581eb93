"""Exchanged channels against the closed kinematics of a rigid car."""

from __future__ import annotations

import numpy as np
import pytest

from triage.signals.vehicle_reference import wheel_speed_factors
from triage.signals.wiring import AS_WIRED, EXCHANGES, Order, fit_curves
from triage.vehicle import Vehicle

CURVATURE = np.concatenate([sign * np.linspace(0.02, 0.14, 30) for sign in (1.0, -1.0)])


def _ratio(vehicle: Vehicle, curvature: np.ndarray = CURVATURE) -> np.ndarray:
    factors = wheel_speed_factors(curvature, vehicle)
    return factors / factors.mean(axis=0)


@pytest.mark.parametrize("wheelbase_m", [2.35, 2.7, 3.2])
def test_a_car_wired_as_it_should_be_fits_whatever_its_wheelbase(wheelbase_m: float) -> None:
    ratio = _ratio(Vehicle(wheelbase_m=wheelbase_m))
    assert fit_curves(ratio, AS_WIRED, Vehicle()).misfit.mean() < 0.05
    for order, _ in EXCHANGES:
        assert fit_curves(ratio, order, Vehicle()).misfit.mean() > 1.0


@pytest.mark.parametrize("order", [order for order, _ in EXCHANGES])
def test_every_exchange_is_found(order: Order) -> None:
    exchanged = _ratio(Vehicle())[np.argsort(order)]
    fits = {one: fit_curves(exchanged, one, Vehicle()).misfit.mean() for one, _ in EXCHANGES}
    assert min(fits, key=lambda one: fits[one]) == order
    assert fit_curves(exchanged, AS_WIRED, Vehicle()).misfit.mean() > 20.0 * fits[order]


def test_both_axles_mirrored_cannot_be_seen() -> None:
    mirrored = _ratio(Vehicle())[[1, 0, 3, 2]]
    assert fit_curves(mirrored, AS_WIRED, Vehicle()).misfit.mean() < 0.05


def test_slip_of_a_driven_axle_is_no_exchange() -> None:
    ratio = _ratio(Vehicle()) * np.array([1.006, 1.006, 1.0, 1.0])[:, None]
    wired = fit_curves(ratio, AS_WIRED, Vehicle()).misfit.mean()
    assert all(fit_curves(ratio, order, Vehicle()).misfit.mean() > 3.0 * wired for order, _ in EXCHANGES)


def test_noise_told_beforehand_is_no_misfit() -> None:
    """With numbers of known noise the misfit of the right order is that of a chi-square, 1 on average."""
    rng = np.random.default_rng(4)
    noise = 0.03
    ratio = np.repeat(_ratio(Vehicle()), 40, axis=1)
    ratio = ratio + noise * rng.normal(size=ratio.shape)
    assert fit_curves(ratio, AS_WIRED, Vehicle()).misfit.mean() > 5.0
    told = fit_curves(ratio, AS_WIRED, Vehicle(), noise_ratio=noise).misfit.mean()
    assert 0.7 < told < 1.1
