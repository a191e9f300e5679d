"""Wire gauges: AWG after ASTM B258, SWG after BS 3737:1964 (withdrawn; table copy seen).

28 SWG is .0148 in after the legal step rule (0.8 thou from 39 to 30), though one seen table prints
.0149. Of 31 to 40 SWG only the legal steps were seen (copy): 0.8 thou a number down to 39, 0.4 thou
from there. Shop tables round 20 AWG to 0.813 mm and 16 AWG to 1.290 mm: +/- 0.002 mm.
"""

from __future__ import annotations

import pytest

from wellstrung.common.units import awg, swg, wire

ASTM_B258 = {
    10: 2.5882, 11: 2.3048, 12: 2.0525, 13: 1.8278, 14: 1.6277, 15: 1.4495, 16: 1.2908, 17: 1.1495,
    18: 1.0237, 19: 0.9116, 20: 0.8118, 21: 0.7229, 22: 0.6438, 23: 0.5733, 24: 0.5106, 25: 0.4547,
    26: 0.4049, 27: 0.3606, 28: 0.3211, 29: 0.2859, 30: 0.2546, 31: 0.2268, 32: 0.2019,
}  # fmt: skip
BS_3737 = {
    10: 3.251, 11: 2.946, 12: 2.642, 13: 2.337, 14: 2.032, 15: 1.829, 16: 1.626, 17: 1.422,
    18: 1.219, 19: 1.016, 20: 0.914, 21: 0.813, 22: 0.711, 23: 0.610, 24: 0.559, 25: 0.508,
    26: 0.457, 27: 0.417, 28: 0.376, 29: 0.345, 30: 0.315,
}  # fmt: skip
SHOP = {16: 1.290, 18: 1.024, 20: 0.813}


@pytest.mark.parametrize("gauge", ASTM_B258)
def test_awg(gauge: int) -> None:
    assert awg(gauge) == pytest.approx(ASTM_B258[gauge], abs=5e-5)


@pytest.mark.parametrize("gauge", BS_3737)
def test_swg(gauge: int) -> None:
    assert swg(gauge) == pytest.approx(BS_3737[gauge], abs=5e-4)


def test_28_swg_follows_the_legal_steps() -> None:
    assert swg(28) == pytest.approx(0.0148 * 25.4)


@pytest.mark.parametrize("gauge", range(30, 40))
def test_the_legal_steps_of_thin_swg(gauge: int) -> None:
    thou = 0.8 if gauge < 39 else 0.4
    assert swg(gauge) - swg(gauge + 1) == pytest.approx(thou * 0.0254)


@pytest.mark.parametrize("gauge", SHOP)
def test_shop_tables_agree_within_rounding(gauge: int) -> None:
    assert awg(gauge) == pytest.approx(SHOP[gauge], abs=2e-3)


def test_the_fixed_points_of_awg() -> None:
    assert awg(36) == pytest.approx(0.005 * 25.4)
    assert awg(-3) == pytest.approx(0.46 * 25.4)
    assert wire("0000 AWG").value == awg(-3)
    assert wire("00 AWG").value == awg(-1)


def test_the_systems_are_not_to_be_mixed() -> None:
    assert swg(20) / awg(20) == pytest.approx(1.126, abs=1e-3)
    assert swg(21) == pytest.approx(awg(20), abs=1.5e-3)
    assert awg(17) / awg(20) == pytest.approx(1.41599, abs=1e-5)
