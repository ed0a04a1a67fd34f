#!/usr/bin/env bash
# Installs the package that lies here, opens it, taps, kills and opens it again. Fails on a traceback. Not run by anyone yet.
set -euo pipefail
name=org.deckhand.deckhand
adb install -r ./*.apk
adb logcat -c
opened() { adb shell monkey -p "$name" -c android.intent.category.LAUNCHER 1; sleep 20; adb shell pidof "$name"; }
opened
adb shell input tap 540 1200
sleep 3
adb shell input keyevent KEYCODE_BACK
sleep 3
adb shell am force-stop "$name"
opened
adb exec-out screencap -p > opened.png
if adb logcat -d -s python:I AndroidRuntime:E | grep -E "Traceback|FATAL EXCEPTION"; then exit 1; fi
