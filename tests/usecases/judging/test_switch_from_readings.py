"""What a datasheet prints becomes a switch: only what may be used, with its place, in magnitudes."""

import pytest

from service.facts.kept_reading import Standing
from service.facts.reading import Limit, Sheet, Status
from service.facts.sourced import Known
from service.usecases.switch_from_readings import Described, offered_by_sheet, offered_by_store, switch_from_readings

AB75N40 = Described(marking="AB75N40", polarity="N", package="TO-263")


def test_only_accepted_confirmed_and_corrected_readings_are_used(reading, kept):
    """What waits for review or was rejected never reaches a result."""
    entries = [kept(reading("vds_max", 75.0 + number), standing) for number, standing in enumerate(Standing)]
    switch = switch_from_readings(offered_by_store(entries), described=AB75N40)

    usable = {Standing.ACCEPTED, Standing.CONFIRMED, Standing.CORRECTED}
    assert [value.sourced.value for value in switch.values] == [75.0 + number for number, one in enumerate(Standing) if one in usable]


def test_of_a_sheet_just_read_only_accepted_readings_are_used(reading):
    """The same rule holds before anything is kept."""
    readings = (reading("vds_max", 75.0), reading("vgs_max", 20.0, status=Status.REVIEW))
    sheet = Sheet(reader_version="1", file="a.pdf", sha256="cd" * 32, readings=readings)

    assert [value.key for value in switch_from_readings(offered_by_sheet(sheet), described=AB75N40).values] == ["vds_max"]


def test_every_value_keeps_its_place_on_the_page(reading, kept):
    """The file, page, box and words of a reading travel with its value."""
    entry = kept(reading("rds_on", 0.004, vgs=10.0))
    fact = switch_from_readings(offered_by_store([entry]), described=AB75N40).values[0].sourced

    assert (fact.value, fact.unit, fact.known) == (0.004, "ohm", Known.PRINTED)
    assert (fact.source.sha256, fact.source.page, fact.source.bbox, fact.source.quote) == (entry.sha256, 2, entry.reading.bbox, "rds_on 0.004")
    assert fact.source.reading == entry.id


def test_the_signs_of_a_p_channel_part_stay_on_its_sheet(reading, kept):
    """A switch is judged in magnitudes; temperatures keep their sign."""
    entries = [kept(reading("rds_on", 0.005, vgs=-10.0, id=-20.0, tj=-40.0)), kept(reading("vds_max", -40.0))]
    resistance, voltage = switch_from_readings(offered_by_store(entries), described=AB75N40).values

    assert (resistance.cond.vgs, resistance.cond.id, resistance.cond.tj) == (10.0, 20.0, -40.0)
    assert voltage.sourced.value == 40.0


def test_what_no_person_has_settled_is_to_be_looked_at(reading, kept):
    """A confirmed value no longer asks for attention."""
    entries = [kept(reading("vds_max", 75.0), Standing.CONFIRMED), kept(reading("tj_max", 175.0))]

    assert switch_from_readings(offered_by_store(entries), described=AB75N40).look_at == ("kept-tj_max-max-175.0",)


@pytest.mark.parametrize(
    ("standing", "used"),
    [(Standing.ACCEPTED, {"tj_max"}), (Standing.CONFIRMED, {"tj_max", "pd", "rth_jc"})],
)
def test_a_sheet_that_contradicts_itself_waits_for_a_person(reading, kept, standing, used):
    """94 W and 2.0 K/W make 188 K, a quarter more than the 150 K of a 175 degC part: both wait until confirmed (NXP AN11158, 2.4)."""
    entries = [kept(reading("pd", 94.0, tc=25.0), standing), kept(reading("rth_jc", 2.0), standing), kept(reading("tj_max", 175.0))]
    switch = switch_from_readings(offered_by_store(entries), described=AB75N40)

    assert {value.key for value in switch.values} == used
    assert {"kept-pd-max-94.0-25.0" in switch.look_at, "kept-rth_jc-max-2.0" in switch.look_at} == {standing is Standing.ACCEPTED}


def test_a_sheet_that_is_six_per_cent_off_is_used(reading, kept):
    """IRFZ44N prints 94 W and 1.5 K/W for 150 K, 6 % apart: odd, and used."""
    entries = [kept(reading("pd", 94.0, tc=25.0)), kept(reading("rth_jc", 1.5)), kept(reading("tj_max", 175.0))]

    assert {value.key for value in switch_from_readings(offered_by_store(entries), described=AB75N40).values} == {"pd", "rth_jc", "tj_max"}


def test_of_several_channels_the_named_one_is_taken(reading, kept):
    """A dual part's switch is the one that the board uses."""
    entries = [kept(reading("rds_on", 0.020, vgs=10.0, ch="Q1")), kept(reading("rds_on", 0.030, vgs=10.0, ch="Q2")), kept(reading("tj_max", 150.0))]
    switch = switch_from_readings(offered_by_store(entries), described=AB75N40, channel="Q1")

    assert [value.sourced.value for value in switch.of("rds_on")] == [0.020]
    assert switch.of("tj_max")


def test_of_several_channels_the_weaker_one_counts_where_none_is_named(reading, kept):
    """A safe bound comes before giving up: the larger resistance, the smaller rating."""
    entries = [
        kept(reading("rds_on", 0.020, vgs=10.0, ch="Q1")),
        kept(reading("rds_on", 0.030, vgs=-10.0, ch="Q2")),
        kept(reading("vds_max", 30.0, ch="Q1")),
        kept(reading("vds_max", -20.0, ch="Q2")),
    ]
    switch = switch_from_readings(offered_by_store(entries), described=AB75N40)

    assert [value.sourced.value for value in switch.of("rds_on")] == [0.030]
    assert [value.sourced.value for value in switch.of("vds_max")] == [20.0]
    assert len(switch.look_at) == 2, "nobody is asked to compare the values of the stronger channel, which no result uses"


@pytest.mark.parametrize(
    ("marking", "volts"),
    [("AB75N40", [75.0]), ("AB75N40F", [70.0]), ("AB75N40F-TR", [70.0]), ("ab 75n40", [75.0]), ("XY1", [70.0])],
)
def test_a_part_hears_what_its_sheet_says_of_it_alone(reading, kept, marking, volts):
    """A full-pack sister with a longer name is another part; an ordering code is the same; of strangers the weaker one counts."""
    entries = [kept(reading("vds_max", 75.0, part="AB75N40")), kept(reading("vds_max", 70.0, part="AB75N40F")), kept(reading("id_pulse", 580.0))]
    switch = switch_from_readings(offered_by_store(entries), described=Described(marking=marking))

    assert [value.sourced.value for value in switch.of("vds_max")] == volts
    assert switch.of("id_pulse")


def test_package_and_silicon_limits_keep_their_names(reading, kept):
    """Which ampere figure bites is for the engine to say."""
    entries = [kept(reading("id_cont", 145.0, tc=25.0, limited_by="silicon")), kept(reading("id_cont", 110.0, tc=25.0, limited_by="package"))]
    switch = switch_from_readings(offered_by_store(entries), described=AB75N40)

    assert [value.cond.limited_by for value in switch.of("id_cont", Limit.MAX)] == ["silicon", "package"]
