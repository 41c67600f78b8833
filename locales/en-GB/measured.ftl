measured-title_lamp_log = The small light, from cold
measured-title_temperature_log = The oven's thermometer, from cold
measured-degrees = °C
measured-minutes = minutes since it was switched on
measured-expected = as nine in ten simulated sound ovens
measured-middle = the middle of them
measured-setting = setting
measured-reading = read
measured-below = read, lower than that
measured-above = read, higher than that
measured-opened = door opened
measured-lamp = small light
measured-lit = lit
measured-out = out
measured-both = both
measured-put_right = { $off ->
    [right] The thermometer was checked in water and reads as it should.
    [high] The readings were put right: the thermometer was found to read { $kelvins } degrees too high, and so much was taken off them.
   *[low] The readings were put right: the thermometer was found to read { $kelvins } degrees too low, and so much was added to them.
}
measured-says_setting = The oven was set to { $set_c } °C.
measured-says_lamp_never_out = The light never went out in { $ended_s } minutes.
measured-says_lamp_never_lit = The light never came on in { $ended_s } minutes.
measured-says_lamp_first_lit = The light first came on at { $at_s }.
measured-says_lamp_first_out = The light first went out at { $at_s }.
measured-says_lamp_cycles = { $cycles ->
    [one] From then it went out again after { $mean_s } minutes, and was lit for { $share_lit } % of that time.
   *[other] From then it went out { $cycles } times more, every { $mean_s } minutes, and was lit for { $share_lit } % of that time.
}
measured-says_lamp_stayed_lit = From { $since_s } until the end at { $ended_s } it stayed lit.
measured-says_lamp_stayed_out = From { $since_s } until the end at { $ended_s } it stayed out.
measured-says_lamp_in_all = In all it was lit for { $share_lit } % of { $ended_s } minutes.
measured-says_hottest_reading = The highest reading was { $reading_c } °C, at { $at_s }.
measured-says_last_reading = The last reading was { $reading_c } °C, at { $at_s }.
measured-says_last_expected = Nine in ten simulated sound ovens would show { $low_c } to { $high_c } °C then.
measured-says_readings_compared = Of { $readings } readings, { $below } lay lower than in those ovens and { $above } higher.
measured-says_opened = { $times ->
    [one] The door was opened at { $first_s }.
   *[other] The door was opened { $times } times, from { $first_s } to { $last_s }.
}
measured-usual_out = Usually, in nine of ten simulated sound ovens, the light first goes out between { $early } and { $late } minutes; yours went out at { $own }.
measured-usual_not_out = Usually, in nine of ten simulated sound ovens, the light first goes out between { $early } and { $late } minutes; yours did not go out in { $own }.
measured-band = The shaded band is where the thermometer would have stood in nine of ten simulated sound ovens.
measured-compared = One moment: this is compared with simulated ovens.
measured-written = The chart is in { $where }.
measured-not_written = The chart could not be written: { $reason }.
measured-nothing_drawn = Nothing was measured in this session that can be drawn.
