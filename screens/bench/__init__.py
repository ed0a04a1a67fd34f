"""Where the board is built and set."""

PAGES = {
    "bench": "screens.bench.home.bench_page",
    "bench.controller": "screens.bench.controller.controller_page",
    "bench.power": "screens.bench.power.power_page",
    "bench.belt": "screens.bench.belt.belt_page",
    "bench.motor": "screens.bench.loads.motor_page",
    "bench.sound": "screens.bench.sound.sound_page",
    "bench.saved": "screens.bench.saved.saved_page",
    "bench.wear": "screens.bench.wear.wear_page",
    "bench.wear_sign": "screens.bench.wear.sign_page",
    "bench.view": "screens.bench.view.view_page",
    "bench.build": "screens.bench.build.build_page",
    "bench.faults": "screens.bench.faults.faults_page",
    "bench.fault": "screens.bench.fault.fault_page",
    "bench.spares": "screens.bench.spares.spares_page",
    "bench.joints": "screens.bench.joints.joints_page",
    "bench.joint": "screens.bench.joint.joint_page",
    "bench.joint_edit": "screens.bench.joint_edit.joint_edit_page",
    "bench.joint_value": "screens.bench.joint_value.joint_value_page",
    "bench.joint_done": "screens.bench.joint_done.joint_done_page",
    "bench.lookup_card": "screens.bench.lookup_card.lookup_card_page",
    "bench.locker": "screens.bench.locker.locker_page",
    "bench.reach": "screens.bench.reach.reach_page",
}
"""Class of each page by its name; it is imported at the first visit."""
