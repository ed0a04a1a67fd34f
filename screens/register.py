"""The one register of pages: the name of each, and where it is made.

A module is loaded at the first visit to its page.
"""

from functools import cache
from importlib import import_module

from screens.page import PageFunction

PAGES = {
    "ride": "screens.ride.home.ride_page",
    "ride.run": "screens.ride.run.run_page",
    "ride.run_list": "screens.ride.lists.run_list",
    "ride.run_over": "screens.ride.run_over.run_over",
    "ride.not_right": "screens.ride.not_right.not_right",
    "ride.lists": "screens.ride.lists.lists_page",
    "ride.tension": "screens.ride.tension.tension_check",
    "ride.tension_saved": "screens.ride.tension_saved.checked_page",
    "ride.flight": "screens.ride.flight.flight_page",
    "ride.flight_card": "screens.ride.flight.flight_card",
    "ride.pack_signs": "screens.ride.not_right.pack_signs",
    "bench": "screens.bench.home.bench_page",
    "bench.controller": "screens.bench.power.controller_page",
    "bench.power": "screens.bench.power.power_page",
    "bench.belt": "screens.bench.belt.belt_page",
    "bench.motor": "screens.bench.loads.motor_page",
    "bench.sound": "screens.bench.sound.sound_page",
    "bench.saved": "screens.ride.tension_saved.saved_page",
    "bench.wear": "screens.bench.faults.wear_page",
    "bench.wear_sign": "screens.bench.faults.sign_page",
    "bench.view": "screens.bench.belt.view_page",
    "bench.build": "screens.bench.home.build_page",
    "bench.faults": "screens.bench.faults.faults_page",
    "bench.fault": "screens.bench.faults.fault_page",
    "bench.spares": "screens.bench.spares.spares_page",
    "bench.joints": "screens.bench.joint.joints_page",
    "bench.joint": "screens.bench.joint.joint_page",
    "bench.joint_edit": "screens.bench.joint.joint_edit_page",
    "bench.joint_value": "screens.bench.joint_value.joint_value_page",
    "bench.joint_done": "screens.bench.joint_done.joint_done_page",
    "bench.lookup_card": "screens.bench.lookup.lookup_card_page",
    "bench.locker": "screens.bench.locker.locker_page",
    "bench.reach": "screens.bench.reach.reach_page",
    "numbers": "screens.numbers.home.numbers_page",
    "numbers.gearing": "screens.numbers.gearing.gearing_page",
    "numbers.packs": "screens.numbers.packs.packs_page",
    "numbers.range": "screens.numbers.range.range_page",
    "numbers.charging": "screens.numbers.packs.charging_page",
    "numbers.joining": "screens.numbers.joining.joining_page",
    "numbers.wiring": "screens.numbers.wiring.wiring_page",
    "numbers.descents": "screens.numbers.packs.descents_page",
    "numbers.care": "screens.numbers.packs.care_page",
    "numbers.belt": "screens.numbers.belt.belt_page",
    "numbers.fit": "screens.numbers.belt.fit_page",
    "numbers.feel": "screens.numbers.wheels.feel_page",
    "numbers.pairs": "screens.numbers.pairs.pairs_page",
    "numbers.pair": "screens.numbers.best_pairs.pair_page",
    "numbers.stopping": "screens.numbers.stopping.stopping_page",
    "numbers.compare": "screens.numbers.compare.compare_page",
    "numbers.rides": "screens.numbers.drag.rides_page",
    "numbers.coast": "screens.numbers.drag.coast_page",
    "numbers.hold": "screens.numbers.hold.hold_page",
    "numbers.wheel": "screens.numbers.wheels.wheel_page",
    "numbers.bench_motor": "screens.numbers.desk.bench_motor_page",
    "numbers.units": "screens.numbers.desk.units_page",
    "log": "screens.log.home.log_page",
    "log.tension": "screens.log.tension.history_page",
    "log.due": "screens.log.due.due_page",
    "log.entry": "screens.log.entry.entry_page",
    "log.ride": "screens.log.ride.ride_page",
    "log.note": "screens.log.entry.note_page",
    "log.snooze": "screens.log.entry.snooze_page",
    "log.bin": "screens.log.home.bin_page",
    "log.export": "screens.log.export.export_page",
    "board": "screens.board.home.board_page",
    "board.value": "screens.board.value.value_page",
    "board.boards": "screens.board.boards.boards_page",
    "board.set_ups": "screens.board.boards.set_ups_page",
    "board.name": "screens.board.boards.name_page",
    "settings": "screens.settings.home.settings_page",
    "settings.lists": "screens.settings.lists.lists_page",
    "settings.list": "screens.settings.lists.list_page",
    "settings.code": "screens.settings.files.code_page",
    "settings.fault": "screens.settings.fault.fault_page",
    "settings.files": "screens.settings.files.files_page",
    "settings.unread": "screens.settings.files.unread_page",
    "settings.sources": "screens.settings.sources.sources_page",
    "settings.licences": "screens.settings.sources.licences_page",
    "settings.item": "screens.settings.lists.item_page",
    "working": "screens.working.working_page",
    "search": "screens.search.search_page",
    "glossary": "screens.glossary.glossary_page",
}


@cache
def page_function(name: str) -> PageFunction:
    """Return the function of a page; its module is loaded at the first visit."""
    module, _, function = PAGES[name].rpartition(".")
    found: PageFunction = getattr(import_module(module), function)
    return found
