# The chat's own words. Lists of typed words are separated by “|”; the first of each list is the one shown.

words-why = why | why do you ask | why that
words-how = how | what | what do you mean | pardon | sorry | come again | how do i look | how to look | show me how | help
words-not_sure = not sure | i never use it | never use it | i don't use it | i don't use that | i never use that | i never tried | never tried it | no clue | no idea at all | can't say | cannot tell | unsure | idk | i dunno | don't know | i don't know | i dont know | dont know | dunno | no idea | not certain | ?
words-skip = skip | later | not now | pass
words-back = back | go back | previous
words-change = change | change an answer | correct | i made a mistake
words-stop = stop | leave | quit | exit | bye
words-yes = yes | y | yeah | yep | yes please | that one | right | correct
words-no = no | n | nope | nah | no i did not | i did not | it changed | not until then
words-denials = can't | cannot | won't | hardly | barely | scarcely | neither | couldn't | wouldn't
words-opposites = on off | hot cold | warm cold | warm cool | top bottom | left right | more less | lit off | bright dim | always never | open shut | above below | early late | high low | quick slow | loud quiet
words-done = no | no thanks | no thank you | thanks | thank you | done | ok | okay | fine
words-and = and
words-about = about | around | roughly | maybe | approximately | nearly

chat-welcome = Ovenside: find out what your electric oven needs.
chat-caution = A few short questions, most of them just talking. Never take a panel off and never pull the oven out. First, your safety.
chat-hint_choice = Type a number, or say it in your own words.
chat-hint_choices = Type the number. If several fit, type them all, like “1, 3”.
chat-hint_danger = Type the number.
chat-hint_lamp_log = Type “begin” in the moment you switch the oven on, and this program keeps the clock. Or type the times later: 7:40 out, 9:10 on. If you cannot do it now, type “not sure”.
chat-hint_temperature_log = Type “begin” in the moment you switch the oven on, and this program keeps the clock. Or type the readings later: 5:00 80, 10:00 143. If you cannot do it now, type “not sure”.
chat-hint_browning = From the back left to the front right, with 0 for white, 3 for mid-brown, 5 for burnt: top 333 332 222, underside 110 100 000. If you cannot do it now, type “not sure”.
chat-hint_number = Type a number ({ $unit }).
chat-hint_thermometer = Type a number in °C. If the thermometer shows °F, type F behind the number.
chat-hint_text = Type it in your own words.
chat-helper_words = You can also type: { $words }
chat-progress = { $answered } answered · now: { $care }
chat-standing = Your answer so far: { $answer } (press Enter to keep it)
chat-understood = Taken as: { $answer }
chat-nothing_typed = Nothing was typed. If you can't tell, type “not sure”.
chat-unclear = Sorry, I didn't catch that. Please type the number of one of the choices, or “not sure”.
chat-unclear_perhaps = I'm not certain. Do you mean “{ $candidate }”? Type “yes”, or the number of another.
chat-unclear_between = I'm not certain which you mean. Perhaps: { $candidates }? Please type the number.
chat-number_unclear = I need a number here ({ $unit }), like 12. Or type “not sure”.
chat-which_scale = Is that { $reading } °C or { $reading } °F? Type “C” or “F”.
chat-exact_needed = This is about safety, so I don't want to guess. Please type the number, or “not sure”.
chat-heard = What you typed may mean danger. First this:
chat-heard_unclear = I'd rather ask about what you just typed, to be safe:
chat-none_of_these = If none of these is happening, type { $number }. If one is, type its number. If you can't tell, type “not sure”.
chat-not_yet_off = Please follow the steps above. If you can't switch it off safely, keep everybody away from it and call { $network_line } or an electrician. If you ticked it by mistake, type “change”.
chat-off_confirmed = Good. Leave it off. A few more questions, only talking, help whoever comes. Answer them as it was before you switched it off.
chat-why_if = If it is that: { $explain }
chat-leave_off = Please leave the oven off and don't touch it until { $who } has looked at it. If you ticked it by mistake, type “change”.
chat-nothing_more_asked = Nothing more is asked. Type “change” to correct an answer, “why”, or press Enter to leave.
chat-verdict_stays = Noted. The answer stays: { $headline }
chat-take_back = That can't be asked at the moment: { $question } Shall your answer be taken back? Type “yes”, or press Enter to leave it.
chat-moved_on = Somebody else answered in this conversation meanwhile. Here is how it stands now. Please answer again.
chat-not_saved = Note: your answers can't be saved in { $where }: { $reason }. We can talk all the same.
chat-erased_meanwhile = This conversation was erased meanwhile. We go on, but nothing more is kept.
chat-clock_went_back = The clock of this computer went back: it stands { $minutes ->
        [one] a minute
       *[other] { $minutes } minutes
    } before what you told us earlier. Nothing is lost, and the order is kept.
chat-no_longer_saved = Your answers can't be saved: { $reason }. We go on, but nothing more is kept.
chat-change_no_such = There is no such number in the list. Type a number from 1 to { $most }, or press Enter to leave all as it is.
chat-danger_not_skipped = This one is about safety and can't be skipped. If you can't tell, type “not sure”.
chat-nothing_open = There is no open question just now.
chat-nothing_before = There is nothing before this.
chat-answers_heading = Your answers so far:
chat-change_which = Type the number of the answer to change. Press Enter to leave all as it is.
chat-likely_heading = What it may be:
chat-because_heading = Because:
chat-change_heading = This would change it:
chat-tips_heading = Good to know:
chat-after_verdict = Type “change” to correct an answer, “why” to hear more, or press Enter to leave.
chat-why_verdict = It follows from what you told us. Type “change” to see your answers.
chat-saved_as_you_go = Every answer is saved at once. To come back later, type:
chat-saved = Your answers are saved.
chat-resume_with = To go on later, type:
chat-resume_again = To go on later, use the same code, or type: ovenside resume
chat-nothing_saved = Nothing was answered yet, so nothing was saved.
chat-nothing_kept = Not all of this could be saved.
chat-still_on_help = Keep everybody away from it. If you can't switch it off safely, call { $network_line } or an electrician. If you see flames or thick smoke, get out and call { $emergency_line }. If you smell gas, touch no switch, go outside and call { $gas_line }.
chat-not_sure_if_off = Then take it to be on. Keep everybody away from it. If its clock and lights are dark, it is off. If you can't switch it off safely, call { $network_line } or an electrician. You may type “stop” to leave; what you told us is kept.
chat-keep_off = Keep the oven off until somebody qualified has looked at it.
chat-turn_off = If the oven is on for a test, please turn it off now.
chat-welcome_back = Welcome back. You were here:
chat-still_off = You told us of a danger sign before. Please leave the oven off.
chat-engine_naive = Note: the rule engine can't be used on this machine; the plain evaluator does its work.
answer-not_sure = not sure
answer-skipped = skipped

chat-other_rules = Our rules have changed since then. What you told is weighed anew by today's.
sessions-none = There are no saved sessions.
sessions-line = { $id }  begun { $begun }, { $events } entries, { $state }
sessions-open = open
sessions-finished = finished
sessions-erased = Session { $id } and everything in it was erased.
sessions-unknown = There is no such session. “ovenside sessions list” shows what is there.
sessions-code_unknown = There is no session with that code. Please check it: sixteen letters and digits.
sessions-wrong = Session { $id }: { $reason }.
sessions-out_of_order = its entries aren't in their order
sessions-no_entries = it has no entries at all
sessions-without_beginning = its beginning is missing
sessions-fingerprint_differs = it isn't as it was written
sessions-goes_another_way = the session is there already and went another way
sessions-name_taken = another session has its name
sessions-code_taken = another session has its code
sessions-event_repeated = an entry of it stands in another session
sessions-message_repeated = a message in it was taken before
sessions-checked = { $seen ->
        [one] One session
       *[other] { $seen } sessions
    } looked at, { $wrong ->
        [0] each as it was written
       *[other] { $wrong } not as they should be
    }.
sessions-unmarked = { $number ->
        [one] One was
       *[other] { $number } were
    } written by an earlier version, without a fingerprint; it gets one as soon as it goes on.
sessions-purged = { $number ->
        [0] Nothing was
        [one] One session was
       *[other] { $number } sessions were
    } left alone for { $days ->
        [one] a day
       *[other] { $days } days
    } or longer and erased.
sessions-would_purge = { $number ->
        [0] No session was
        [one] One session was
       *[other] { $number } sessions were
    } left alone for { $days ->
        [one] a day
       *[other] { $days } days
    } or longer. Nothing was erased.
sessions-would_purge_more = { $number } sessions or more were left alone for { $days ->
        [one] a day
       *[other] { $days } days
    } or longer. Nothing was erased.
sessions-copied = { $sessions ->
        [one] One session is
       *[other] { $sessions } sessions are
    } there, of which { $made ->
        [0] none was new
        [one] one was new
       *[other] { $made } were new
    }; { $events ->
        [0] nothing of them was new
        [one] one entry was new
       *[other] { $events } entries were new
    }.
sessions-begun = { $id }  begun { $begun }
sessions-of_person = { $number ->
    [0] No session holds that.
    [one] One session holds that. See with “ovenside sessions show” whether it is theirs.
   *[other] { $number } sessions hold that. See with “ovenside sessions show” whether each is theirs.
}
sessions-copied_of_person = { $number ->
    [one] What one session holds is in { $file }.
   *[other] What { $number } sessions hold is in { $file }.
} Hand it to nobody but them.
sessions-forgotten = { $number ->
    [one] One session was erased. Backups and copies in files aren't touched.
   *[other] { $number } sessions were erased. Backups and copies in files aren't touched.
}
sessions-exported = The session is in { $file }, with everything the customer said. Keep it as carefully as the store.
sessions-taken_in = Session { $id } is there; { $number ->
        [0] nothing of it was new
        [one] one entry was new
       *[other] { $number } entries were new
    }.
sessions-key_made = A key is in { $file }. Whoever has it can make files that are taken for yours.
sessions-key_there = There is a file { $file } already; a key is never overwritten.
sessions-not_a_key = That file holds no key; make one with “ovenside sessions key FILE”.
sessions-not_a_session_file = That isn't a file with a session. Nothing was taken in.
sessions-signature_differs = The file was changed, or was signed with another key. Nothing was taken in.
sessions-later_file = The file was written by a later version of this program. Nothing was taken in.
sessions-backup_there = There is a file { $file } already; a backup is never written over another.
sessions-backup_gone = There is no file { $file }.
sessions-not_a_backup = { $file } is no backup of sessions. Nothing was taken in.
sessions-file_there = There is a file { $file } already; it was left as it is. Please give another name.
sessions-file_unusable = The file { $file } can't be used: { $reason }.
sessions-traces_left = What was to be erased is gone from the store, but traces of it may be left in its files: { $reason }. They go with the next erasure that can be finished.
sessions-nothing_to_resume = There is no session to go on with. Type “ovenside” to begin one.
rules-sound = { $count } rule files read, no mistakes.
rules-count = { $count ->
    [one] 1 mistake.
   *[other] { $count } mistakes.
}

weigh-causes = How probable each cause is, whatever else is there too:
weigh-hypotheses = What may be wrong, taken together (one of these, or one less probable):
weigh-evidence = How the answers weigh, in decibans for the first against the second:
weigh-withdrawn = What the likeliest would be without one of the answers:
weigh-left_out = What is not weighed, as a share of everything:
weigh-endings = What each way to end is expected to cost:
weigh-questions = What asking on would be worth, less the trouble:
weigh-share = { $percent } %  { $what }
weigh-decibans = { $decibans }  { $what }
weigh-cost = { $cost } { $currency }  { $what }
weigh-worth = { $net } { $currency }, by itself { $alone }  { $what }
weigh-against = { $first } — against — { $second }
weigh-prior = before any answer
weigh-sum = all together
weigh-without = { $cause }, without “{ $answer }”
weigh-three_causes = three faults at once, or two and a habit
weigh-two_habits = two habits at once, alone or with a fault
weigh-still_more_at_most = still more at once, at most
weigh-ranges = Which assumed figures would end it otherwise, at an end of their range:
weigh-range = { $where } at { $value } → { $ending }
weigh-ranges_none = none of them

words-light_or_oven = it is off | its off | it is off now | its off now | now it is off | now its off
words-measuring_begin = begin | start | ok its on | ok it is on | its on | its on now | it is on now | oven on | oven is on | the oven is on | i switched it on | ok begin | ok start | go | now | switched on | it is on
words-measuring_end = end | finished | enough | that is all | switched off | it is off | its off | oven off | i switched it off
words-measuring_lines = lines | all lines | show | show lines | show all | show all lines | list | the lines
words-measuring_undo = undo | slip | take that back | wrong key
words-lamp_out = out | off | light off | the light is off | light is off | the lights off | its out | it is out | its gone out | it has gone out | gone out | light went out | the light went out | went out | goes out | dark | it went out | light out
words-lamp_lit = on | lit | it came back on | came back on | back on | its back on | it is back on | light came on | the light came on | the light came back on | light is on | the light is on | came on | comes on | lights up | it came on | light on
words-lamp_still_lit = still on | still lit | it is still on | its still on | it is still lit | its still lit | light still on | light is still on | light still lit | light is still lit | the light still on | the light is still on | the lights still on | the lamp is still on | lamp still on | the light is still lit | and still on | it stays on | light stays on | the light stays on
words-lamp_still_out = still out | still dark | it is still out | its still out | it is still dark | its still dark | light still out | light is still out | light still off | light is still off | the light is still out | the light is still off | the light is still dark | the lights still out | the lamp is still out
words-door_opened = opened | door | door opened | opened the door
words-degrees_alone = degrees | degree | deg | °
words-tray_top = top | tops | the top | the tops | top side | upper side
words-tray_underside = underside | undersides | the underside | the undersides | under | underneath | bottom | bottoms | the bottom | the bottoms

measuring-begun_lamp_log = The clock runs. Set a kitchen timer for { $minutes } minutes too. If the small light is dark now, type “out”. Press Enter each time it changes, or type “out” or “on”. A change you missed: type its time, such as 9:10 on. A slip: type “undo”. To see all you noted, type “lines”. When you have seen enough, or after { $minutes } minutes, switch the oven off and type “end”. If you see smoke or smell burning, switch it off at once and tell us.
measuring-begun_temperature_log = The clock runs. Set a kitchen timer for { $minutes } minutes too. Every few minutes, type what the thermometer reads, such as 143 or 290 F. If you open the door, type “opened”. A slip: type “undo”. To see all you noted, type “lines”. After { $minutes } minutes at the latest, switch the oven off and type “end”. If you see smoke or smell burning, switch it off at once and tell us.
measuring-out = the light went out
measuring-lit = the light came on
measuring-opened = the door was opened
measuring-lamp_more = { $left ->
    [0] That is enough. Switch the oven off and type “end”.
    [one] One more time out would be enough.
   *[other] { $left } more times out would be enough.
}
measuring-readings_more = { $readings ->
    [0] Nothing is noted yet. One line every few minutes is best.
    [one] One line so far. One every few minutes is best.
   *[other] { $readings } lines so far. One every few minutes is best.
}
measuring-latest_lines = These are the last { $shown } of { $number } lines. To see them all, type “lines”.
measuring-kept = { $number ->
    [0] Nothing was noted before the pause.
    [one] One line was kept from before the pause:
   *[other] { $number } lines were kept from before the pause. The last of them:
}
measuring-repeated = { $which ->
    [neither] At { $kept } and at { $left_out } the light did the same, so neither is noted. Type what it did between too, or leave one of the two out.
    [earlier] “{ $kept } { $light ->
        [out] out
       *[lit] on
    }” is noted, so the light did the same at { $left_out }, and that is not noted. If you missed a change between, type it with its time. If the noted one is wrong, type “undo” until it is gone, and type the right ones again.
   *[last] “{ $kept } { $light ->
        [out] out
       *[lit] on
    }” is noted, so the light did the same at { $left_out }, and that is not noted. If you missed a change between, type it with its time. If the noted one is wrong, type “undo”, and then { $left_out } with what it did.
}
measuring-time_is_up = The time is up.
measuring-then_end = If you took back a slip, you may type it right now, with its time. Then type “end”.
measuring-until_up = Did you watch the light until the { $minutes } minutes were over, and { $light ->
    [out] was it out
   *[lit] was it on
} all the time from { $since } until then? Type “yes”, “no” or “not sure”.
measuring-late_cut = What came just after the { $minutes } minutes is kept as the reading at { $minutes } minutes.
measuring-late_dropped = What came after the { $minutes } minutes does not count.
measuring-off_now = Turn the oven off now, and leave its door shut until it is cool.
measuring-off_if_on = If the oven is on for this, turn it off now, and leave its door shut until it is cool.
measuring-no_clock = There is no clock here for this one. Set a kitchen timer for { $minutes } minutes, and stay with the oven. Switch it off when the tops are mid-brown, or when the timer rings. When all is cold, type the figures.
measuring-light_or_oven = Is the light off, or the oven? For the light, type “out”. For the oven, type “end”.
measuring-light_or_oven_list = Is the light off, or the oven? Type the list again, with “out” for the light and “end” for the oven.
measuring-stay_with_it = Somebody must stay with the oven, and no child or pet near it. If that is not so, or anything worries you, turn it off now and type “end”.
measuring-doubt = What was read may be far too hot, so we ask about that first.
measuring-not_kept = What you noted is not kept.
measuring-cold_again = The oven must be cold again first. If it is still warm, or you are not sure, type “not sure”.
measuring-too_early = That was too short to tell anything, so this test is ended.
measuring-not_yet = The clock says { $now }. That time has not come yet.
measuring-unchanged = Noted: nothing changed. So far the light is { $light ->
    [out] out
   *[lit] on
}. Type only changes.
measuring-too_hot = That is far more than the setting.
measuring-slips = { $number ->
    [one] { $readings } cannot be the heat in a kitchen's oven, so that one is left out. The other lines are kept.
   *[other] { $readings } cannot be the heat in a kitchen's oven, so these are left out. The other lines are kept.
} Please read it again, and type it with its time, such as { $example }.
measuring-slips_or_end = To go on without it, type “end”.
measuring-which_scale = Is that { $reading } °C or { $reading } °F? Type “C” or “F”. If you cannot tell, turn the oven off now and type “not sure”.
measuring-not_begun = When you switch the oven on, type “begin”. Or type the times afterwards, as shown above. If you cannot do it now, type “not sure”.
measuring-until_when = Until when did you watch? Type all of it in one line, such as 7:40 out, 9:10 on, 20:00 end.
measuring-unclear_lamp_log = We did not understand that. Press Enter or type “out” or “on” when the light changes, a time with one of them, “undo”, “lines” to see all you noted, or “end” when you have switched the oven off.
measuring-unclear_temperature_log = We did not understand that. Type a reading such as 143 or 290 F, a time with one, “opened”, “undo”, “lines” to see all you noted, or “end”.
measuring-unclear_browning = Please type figures here, not words: nine for the tops and nine for the undersides, from 0 for white to 5 for burnt. For example: top 333 332 222, underside 110 100 000.
measuring-tray_count = { $side ->
    [top] For the tops we count
    [underside] For the undersides we count
   *[unnamed] We count
} { $number ->
    [one] one figure.
   *[other] { $number } figures.
} Each side needs nine, one for each slice, and a dash where no slice lay. For example: top 333 332 222, underside 110 100 000.
measuring-tray_other = { $side ->
    [top] We have the tops. Now the undersides, nine figures too. For example: underside 110 100 000.
   *[underside] We have the undersides. Now the tops, nine figures too. For example: top 333 332 222.
}
measuring-tray_which = Is that the tops or the undersides? Type the name first. For example: top 333 332 222.
measuring-tray_order = Are the tops { $top }, and the undersides { $underside }? Type “yes” or “no”.
measuring-tray_names = Then type both sides with their names. For example: top 333 332 222, underside 110 100 000.
measuring-no_shade = { $number ->
    [one] { $figures } is no shade.
   *[other] { $figures } are no shades.
} Shades go from 0 for white to 5 for burnt. Type both sides with nine figures each: top 333 332 222, underside 110 100 000.
measuring-pause = You were in the middle of a test with a hot oven. How is it now?
measuring-pause_all_well = It is on, somebody was with it all the time, and nothing is unusual. (Then type what you saw meanwhile, with its times.)
measuring-pause_is_off = It is off, or it is on and nobody was with it all the time
measuring-pause_unclear = If nobody is with it, turn the oven off now. Please type 1, 2 or 3. If you are not sure, type 2.
measuring-pause_unusual = Something is unusual


thermometer-ice = In ice and water that is well stirred, it should read { $expected } °C.
thermometer-boiling = In boiling water, it should read about { $expected } °C where you live.
thermometer-checked = { $off ->
    [right] Noted: your thermometer reads as it should.
    [high] Noted: your thermometer reads { $kelvins } degrees too high. So much is taken off its readings.
   *[low] Noted: your thermometer reads { $kelvins } degrees too low. So much is added to its readings.
}
thermometer-no_good = Your thermometer is more than 10 degrees off, so it is no good for this. We go on without it. Do not go by it when you cook.
