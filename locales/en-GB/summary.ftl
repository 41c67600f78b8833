# The summary that is read before a visit, by the engineer and by the household.

summary-title_engineer = Before the visit
summary-title_household = About your oven
summary-hour = { $time }
summary-time = { $date } { $time } { $zone }

summary-heading_off = Is it off?
summary-heading_oven = Which oven
summary-heading_said = What the customer says
summary-heading_likely = What it probably is
summary-heading_tests = What to test first
summary-heading_tests_then = What to test then
summary-heading_bring = What to bring
summary-heading_unknown = What nobody knows
summary-heading_grid = Where it heats
summary-heading_steps_told = What they were told to do
summary-heading_how_to_test = Where and how
summary-heading_after_repair = After the repair
summary-heading_ruled_out = What is ruled out
summary-heading_rests_on = What that rests on
summary-heading_all_causes = All that is still possible
summary-heading_measured = What was measured
summary-heading_answers = Everything that was said

summary-off_confirmed = The customer says that it is off: { $how } ({ $when }). Nobody has checked that: prove dead.
summary-off_not_confirmed = Danger is or was in question, and nobody has said that the oven is off.
summary-off_not_told = Nobody was asked to switch the oven off. It may be in use.
summary-sign_told = { $sign } (told { $when })
summary-sign_found = Follows from the answers: { $sign } (since { $when })
summary-sign_likely = Likely by the answers: { $sign } (since { $when })
summary-sign_withdrawn = Told and taken back: { $sign } (last stood { $when }, taken back { $back }). Look for it all the same.

summary-cavity = Cavities
summary-cavity_single = one
summary-cavity_upper = the upper one of two
summary-cavity_lower = the lower one of two
summary-supply = Supply
summary-supply_plug_in_reach = plug within reach
summary-supply_plug_behind = plug behind the oven
summary-supply_wired_in = wired in
summary-supply_by_plug = plug; within reach or behind isn’t known
summary-supply_small_switch = small switch with a fuse
summary-supply_large_switch = wired in: large switch, or straight from the fuse box
summary-asked_not_known = asked, not known
summary-never_asked = never asked
summary-not_known = Not known
summary-ask_before_ordering = Ask before ordering: some parts depend on the serial number.
summary-comes_out_single = Built in, single: commonly two screws in the frame behind the open door. As a rule of thumb 30 to 40 kg: best two people. Door off first. Mind sharp edges and the cable (common practice; the fitting sheet decides).
summary-comes_out_double = Built in, double: commonly up to six screws in the frame, and two people: as a rule of thumb 50 to 60 kg. Doors off first. Mind sharp edges and the cable (common practice; the fitting sheet decides).
summary-comes_out_standing = Stands on the floor: slides out, held by an anti-tilt bracket that must go back (common practice; the fitting sheet decides).
summary-comes_out_table_top = Stands on the worktop: lift it to a bench once it is isolated and cold (common practice).
summary-comes_out_built_in = Built in, single or double: commonly two to six screws in the frame behind the open door. As a rule of thumb 30 to 40 kg, a double 50 to 60 kg: two people. Doors off first. Mind sharp edges and the cable (common practice; the fitting sheet decides).
summary-comes_out_unknown = How it is fitted isn't known: ask whether it is built in, single or double (commonly two to six screws behind the open door), or stands on the floor.
summary-comes_out_tiled_in = It is tiled in or held by a fixed worktop: agree before the visit who may open that.
summary-not_told = Not told

summary-column_cause = Cause
summary-column_probability = Probability
summary-column_part = Part
summary-column_number = No.
summary-column_test = Test
summary-column_how = How
summary-column_expected = Should read
summary-column_follows = Then, with the rows above sound
summary-column_where = Where
summary-column_ruled_out = Ruled out
summary-column_by = By
summary-column_way = Way of heating (– not used; ? not told)
summary-place_top = top
summary-place_base = base
summary-place_rear = rear
summary-place_fan = fan
summary-place_lamp = lamp
summary-cell_not_used = –
summary-cell_not_told = ?
summary-bread = Slices of bread, shade on top / beneath, 0 (white) to 5 (burnt):
summary-bread_seen_from = Seen from the door
summary-bread_back = back
summary-bread_centre = middle
summary-bread_front = front
summary-bread_left = left
summary-bread_right = right
summary-unmarked = A heater without a marking: { $element_low } to { $element_high } Ω shows no more than that it is whole{ $plate ->
    [told] {" "}(none has more than the plate’s { $plate_w } W)
   *[untold] {""}
}.
summary-follows_open = { $reading }: settles nothing, go on.
summary-nothing_to_bring = No part is likely enough to be worth bringing.
summary-follows_fault = { $reading }: a fault by itself.
summary-follows = { $reading }: next likeliest { $cause } { $percent }.
summary-by_several = Several answers together
summary-column_minutes = Minutes
summary-column_time = When
summary-column_question = Question
summary-column_answer = Answer
summary-no_part = none
summary-percent = { $percent } %
summary-below_one = below 1 %
summary-little_known = Few answers were given: this is little more than how common each cause is.
summary-nothing_leads = It is likelier than any fault that nothing is wrong.
summary-before_any_test = Isolate, lock off and prove dead. What reads unsound is put right before going on. Rows marked LIVE or HEATING come last: only by the competent, and only once earth, insulation and the other dead rows are sound.
summary-after_earth = Earth continuity: well below 1 Ω, leads nulled; the maker’s figure decides.
summary-after_insulation = Insulation to earth at 500 V d.c., boards unplugged: { $insulation } MΩ or more; { $insulation_heating } MΩ is allowed where heaters are in the measurement.
summary-after_polarity = Polarity, and the tightness of every terminal that was touched.
summary-after_functions = Every way of heating, and the lamp through a full cycle.
summary-after_put_back = Everything back in its own place: knobs with their inserts, the seal in its groove, every lead as it was.
summary-after_bracket = The anti-tilt bracket back in its place.
summary-local_rules = Common practice. Local rules and licensed work come first.
summary-bring_generic = The kind of part; its number follows from the plate.
summary-would_change = What would change the verdict:
summary-two_at_once = Two at once, counted in each
summary-ruled_out = Ruled out (see page two)
summary-kit_chance = { $parts ->
    [one] With this part one visit mends
   *[other] With these parts one visit mends
} { $percent } of such faults (estimated from the rules, not counted).
summary-asked_in_vain = Asked, and not known
summary-pair = { $first }, and { $second }: { $percent }
summary-changed_answers = { $number ->
    [one] One earlier answer was changed or taken back.
   *[other] { $number } earlier answers were changed or taken back.
}

summary-taken_back = taken back

summary-heading_found = What was found
summary-heading_steps = What to do now
summary-heading_may_be = What it may be
summary-heading_until_then = Until somebody comes
summary-heading_from_now_on = From now on
summary-heading_use_it_well = Using it well
summary-heading_to_hand = What to have ready when you ring
summary-heading_you_said = What you told us
summary-leave_off = Leave the oven off, and do not touch it.
summary-heading_ring = Whom to ring, in this order
summary-ring_hurt = If anybody is hurt, or if anything burns: { $emergency_line }.
summary-ring_medical = Anybody who felt a tingle or a shock, breathed smoke or feels ill: medical advice at once.
summary-ring_who = { $id ->
    [gas_emergency] The gas emergency line: { $gas_line }, from outside.
    [network_operator] The electricity network’s emergency line: { $network_line }.
   *[other] To look at it: { $who }.
}
summary-ring_landlord = It is a rented home: tell your landlord at once, in writing, what is wrong and that the oven must stay off. Agree with them who comes.
summary-ring_guarantee = Afterwards, if it is under a guarantee or a cover plan: tell the maker, the seller or the plan before anything is mended.
summary-you_danger = The danger
summary-you_danger_narrowed = { $sign }: “{ $answer }”
summary-you_off = How it was switched off
summary-you_off_when = { $how } ({ $when })
summary-gas = If you smell gas: touch no switch and make no flame. Open the windows, go outside with everybody, and call { $gas_line } from there.
summary-watch_for = If it sparks, smells of burning or plastic, gets far too hot, or its own knob does not turn it off: switch it off at the wall with dry hands, and leave it off. If that switch or plug sparks, is hot or looks brown, or you would reach over a hot hob, leave it and use the fuse box. { $breaker ->
    [put_back] If the breaker goes off again because of the oven, do not switch it on any more.
   *[left] If a breaker has gone off because of the oven, do not switch the oven’s breaker on again.
}
summary-watch_for_shock = If anybody feels a tingle or a shock: nobody touches the oven, or metal near it, again. { $oven ->
    [stopped] If it is not off yet, switch it off at the fuse box with dry hands, if nothing there is wet, hot or brown.
   *[in_use] Switch it off at the fuse box with dry hands.
} Get medical advice at once. For burns, chest pain or fainting, or if somebody cannot let go, call { $emergency_line }. Do not touch somebody who cannot let go: switch off at the fuse box first.
summary-worse = If you see flames, or if smoke or a smell goes on or grows: get everybody out, shut the door behind you, and call { $emergency_line } from outside.
summary-no_panel = Please take no panel off, do not pull the oven out, and do not measure anything electrical.
summary-in_doubt_off = If in doubt, leave it off.
summary-food = Do not eat meat, poultry, fish or eggs that are not cooked through. { $finish ->
    [elsewhere] Finish them at once in another kitchen, or throw them away.
   *[here] Finish them at once on a hob or in another oven that works well, or throw them away.
} Food that stood lukewarm for hours: in doubt, throw it away. Be firmer with it for infants, and for people who are pregnant, frail or ill.
summary-food_inside = Leave food that is in the oven where it is, and do not eat it later.
summary-hand_plate = { $missing ->
    [make] Maker and model.
    [serial] The serial number.
   *[both] Maker, model and serial number.
} It is on a plate you often see when the door is open. Read it with the oven cold. Do not unscrew anything to find it.
summary-hand_receipt = The receipt, if you have it.
summary-hand_way = How to get in: floor, parking, and an adult who will be there.
summary-not_made = The summary could not be written: { $reason }.
summary-written = The summary is in { $where }.
summary-footer = { $title }, session { $session }, as of { $when }
summary-page_of = { $page } of { $pages }
summary-needs_file = A PDF can't be shown here. Please say where to write it: --to FILE.pdf
summary-asked_about_danger = Asked about danger signs
summary-none_told = none told
summary-told_as = Told as
summary-before_dead_tests = Isolate, lock off and prove dead. Danger was told: nothing is energised before its cause is found. What reads unsound is put right before going on.
summary-made_live = LIVE: { $test }
summary-made_heating = HEATING: { $test }
summary-above_99 = over 99 %
summary-after_phial = The phial in its own clips, its tube without kinks.
summary-after_sensor = The sensor in its place, its plug home.
summary-told_customer = Told to the customer: { $headline }
summary-reason = “{ $answer }” to “{ $question }”: { $times } times likelier with the first than with the second; without this answer the first stands at { $without }.
summary-reason_measured = { $lines }: { $times } times likelier with the first than with the second; without it the first stands at { $without }.
summary-first_and_second = First: { $first }. Second: { $second }. The second is the likeliest that shares no cause with the first and that answers tell from it; so it need not be second in the list of causes.
summary-feared_and_harmless = First: { $first }. Second: { $second }. The first is the likeliest with a dangerous cause, the second the likeliest without one.
summary-speaks_for_it = What speaks for it
summary-speaks_for = What speaks most for { $first }
summary-not_explained = Not explained by it
summary-not_explained_by = Not explained by { $first }
summary-shock_first = Treat earth, insulation and supply as the first fault.
summary-bring_once_known = Only once the plate is known: the part’s number follows from it.
summary-two_visits = Without the plate count on two visits.
summary-plate_by_phone = Make, model and serial number (a photograph of the plate)
summary-see_above = as measured above
summary-rows_on_page_two = { $more ->
    [one] One more row is on page two.
   *[other] { $more } more rows are on page two.
}
summary-one_alone = Of these, { $part } alone: { $percent }.
summary-short_lamp_first_out = first out at { $at_s }
summary-short_lamp_in_all = lit { $share_lit } % of { $ended_s } minutes
summary-short_hottest_reading = highest { $reading_c } °C, at { $at_s }
summary-short_last_expected = sound ovens would show { $low_c } to { $high_c } °C at { $at_s } (nine in ten, simulated)
summary-short_bread = top { $top }, beneath { $beneath } (rows back / middle / front, left to right from the door)
summary-gas_oven = A gas oven isn’t covered here. Soot, a yellow or lazy flame, headaches or sickness near it, or a carbon monoxide alarm: oven off, windows open, everybody out, and call { $gas_line } from outside. With a smell of gas touch no electrical switch. Otherwise: a registered gas engineer.
summary-not_electric = Not an electric oven: this check knows nothing of it and names no cause.
summary-ask_by_phone = Ask by phone first
summary-already_off = You told us that it is off: “{ $how }” ({ $when }). Leave it off.
summary-hand_guarantee = Whether it is under a guarantee or a cover plan. If it is, ring the maker, the seller or the plan first.
summary-hand_fee = Ask what coming out costs before you agree to it.
summary-heading_beside = Trips, repairs, getting in
summary-sign_open = Told, and not yet asked about: { $sign }. Ask before anything is switched on; the questions are not finished.
summary-not_asked = at an unknown time
summary-still_on = The customer said that it is still on ({ $when }).
summary-off_before = It was said to be off: { $how } ({ $when }). The danger was taken back since, so it may be in use.
summary-bring_after_danger = Parts follow from what is found. What is dangerous comes first.
summary-landlord_agrees = Rented: ask whether the landlord agrees to the work.
summary-follows_unsound = { $reading }: { $cause }; put right.
summary-follows_cleared = { $reading }: clears { $cleared }; next likeliest { $cause } { $percent }.
summary-follows_open_cleared = { $reading }: clears { $cleared }; go on.
summary-follows_end_cleared = { $reading }: clears { $cleared }; nothing further here, work by the diagram.
summary-follows_end = { $reading }: nothing further here, work by the diagram.
summary-before_only_dead = Isolate, lock off and prove dead. Every row is made dead. What reads unsound is put right before going on.
summary-told_who_first = Told to the customer: { $headline } First to see it: { $who }.
summary-none_stands_out = No cause stands out.
summary-heading_own_measurements = What your own measurements mean
summary-heading_look_yet = If you can still look
summary-in_any_case = In any case
summary-first_in_any_case = First, in any case
summary-only_if_not_off = Only if it is not off yet, in this order
summary-then_in_any_case = After that, in any case
summary-still_lit = If its clock or a light is still lit after all, it is not off. Do not touch it. { $how ->
    [off_at_breaker] You have been to its breaker already: touch nothing more there, and never try breakers one after another.
    [off_at_main] You have been to the main switch already: touch nothing more there, and never try breakers one after another.
   *[other] Switch off its breaker at the fuse box, with dry hands. If anything there is wet, hot or brown, or that breaker is off already, touch nothing more, and never try breakers one after another.
} Then keep everybody out, and call an electrician, or { $network_line }. If there is smoke, or a smell that grows: everybody out, and call { $emergency_line } from outside.
summary-told_not_asked = This may be dangerous, and we still have to ask you about it: { $sign }. Leave the oven off until then.
summary-found_visit = { $kind ->
    [taken_back] What you told us before pointed to danger, and no longer does. We would rather have it looked at by { $who } before the oven is used again.
    [unknown] We could not find out enough to say what it is. If the oven cooks as you like, leave it be. If it does not, { $who } can find out.
    [supply] Your answers point to something in the oven’s wiring or supply that has to be measured or mended. That is for { $who }, not for you.
   *[explain] Your answers point to something inside the oven that has to be measured or mended. That is for { $who }, not for you.
}
summary-found_first = It may cost you nothing if you do that first. If somebody else opens the oven first, it may cost you your rights. This is not legal advice.
summary-hurry = { $urgency ->
    [routine] You told us of no danger, and there is no hurry.
    [soon] Have it looked at soon.
   *[emergency] Please do not wait with this.
}
summary-found_gas = A gas oven is for { $who }. We only know electric ovens, and we do not guess about gas.
summary-gas_burns_badly = If flames are yellow or lazy, if you see soot, if anybody has a headache or feels sick, or if a carbon monoxide alarm sounds: turn the oven off and open the windows on your way out, go outside with everybody, and call { $gas_line } from there. Who feels sick needs medical help at once. If they are faint, or if there is a fire, call { $emergency_line }.
summary-gas_leave_off = Otherwise, too: leave it off until { $who } has looked at it. Nobody else may work on it.
summary-gas_no_panel = Please take no panel off, and do not pull the oven out.
summary-gas_landlord = It is a rented home: tell your landlord at once, in writing, before you book anybody.
summary-gas_they_ask = They will ask what you noticed and since when, maker and model if you know them, and how to get in.
summary-gas_stay_out = Stay outside until those whom you called say that it is safe. Do not use the oven before.
summary-ways_to_use = What works may be used, with an adult near: { $ways }.
summary-ways_unknown = You told us of no way of heating that works well. Leave the oven off, unless one plainly works; use that only with an adult near.
summary-ways_to_leave = Leave these alone until then, for they do not cook well, or they need what may have failed: { $ways }.
summary-stays_off = Leave the oven off until then.
summary-may_be_used = { $action ->
    [all_normal] You may go on using the oven.
    [use_differently] You told us of no danger. You may use the oven in the way that stands above.
   *[other] You told us of no danger. Once that is done, you may use the oven.
}
summary-both_at_once = Perhaps both at once: { $first }, and { $second }.
summary-look = { $question } { $how } { $outcomes }
summary-look_outcome = If “{ $answer }”, we would say: { $advice }
summary-none_look_over = No damage seen, of all that was asked
summary-none_what_changed = Nothing of these: power cut, moved, mended, cleaned, new tins or recipe, new machine, flood, lightning, mice
summary-none_which_worry = None of the worries that were listed
summary-look_then = Then come back and tell us. Our advice may change.
summary-own_thermometer = Your oven was set to { $set_c } °C. Your thermometer showed { $reading_c } °C at the end, after { $minutes } minutes.
summary-own_thermometer_expected = { $place ->
    [below] In most sound ovens it would show { $low_c } to { $high_c } °C by then, as we reckon it. So your oven stays too cool, or the thermometer is wrong.
    [above] In most sound ovens it would show { $low_c } to { $high_c } °C by then, as we reckon it. So your oven gets too hot, or the thermometer is wrong.
   *[reading] In most sound ovens it would show { $low_c } to { $high_c } °C by then, as we reckon it. Yours did, too.
}
summary-own_light = { $went ->
    [never] With the oven set to { $set_c } °C, the small light on the front did not go out in { $minutes } (minutes and seconds).
   *[out] With the oven set to { $set_c } °C, the small light on the front first went out after { $minutes } (minutes and seconds).
}
summary-own_light_expected = { $place ->
    [later] In most sound ovens it goes out after { $early } to { $late }, as we reckon it. So your oven takes longer to get hot.
    [sooner] In most sound ovens it goes out after { $early } to { $late }, as we reckon it. So yours stops heating sooner.
   *[within] In most sound ovens it goes out after { $early } to { $late }, as we reckon it. Yours fits that.
}
summary-own_do_not_repeat = Do not measure again: the oven stays off.
summary-own_light_dark = The small light on the front did not come on in { $minutes } (minutes and seconds).
summary-own_bread = { $place ->
    [white] Your bread hardly browned at all: { $top } on top and { $underside } underneath, from 0 (white) to 5 (burnt).
    [pale_below] Your bread came to { $top } on top and { $underside } underneath, from 0 (white) to 5 (burnt). So far behind the top the underside seldom stays in a sound oven, as we reckon it.
    [pale_above] Your bread came to { $top } on top and { $underside } underneath, from 0 (white) to 5 (burnt). So far behind the underside the top seldom stays in a sound oven, as we reckon it.
   *[within] Your bread came to { $top } on top and { $underside } underneath, from 0 (white) to 5 (burnt). Much the same happens in a sound oven, as we reckon it.
}
summary-you_what_goes_wrong = What goes wrong
summary-you_which_appliance = Which oven
summary-you_complaint_in_own_words = In your own words
summary-you_which_worry = What you wonder about
summary-you_which_light_or_clock = What is odd about lights or clock
summary-you_anything_else = What else you said
summary-you_age_of_oven = Age of the oven
summary-they_ask = They will ask for what stands under “{ $heading }”, and for this:
summary-they_ask_this = They will ask for this:
summary-heading_outcome = What came of it
summary-outcome_result = How it ended
summary-outcome_causes = What it really was
summary-outcome_part = Part fitted
summary-outcome_minutes = Minutes at the oven
summary-outcome_note = Note
summary-outcome_when = Told
summary-outcome_before = Told before that
summary-outcome_in_short = { $when }: { $result } ({ $causes })
summary-outcome_in_short_no_cause = { $when }: { $result }
