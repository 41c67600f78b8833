# The desk of whoever answers the telephone: the agent's side. What is read out are the interview's own words.

desk-word_new = new
desk-word_take = take
desk-word_park = park
desk-word_calls = calls
desk-word_find = find
desk-word_change = change
desk-word_back = back
desk-word_note = note
desk-word_view = view
desk-word_all = all
desk-word_end = end
desk-word_why = why
desk-word_how = how
desk-word_unsure = unsure
desk-word_skip = skip
desk-word_code = code
desk-word_save = save
desk-word_leave = leave
desk-all_words = Words begin with a full stop; as much of one is enough as is clear. .new call · .take CODE · .calls · .find WORDS · .change NUMBER · .back · .note TEXT · .view facts or causes · .all of them · .why · .how · .unsure · .skip · .park · .code to hand over · .end of the call · .save · .leave

desk-header = Call { $number } · { $who } · { $saved } · reads out in { $lang } · { $parked ->
        [0] none parked
        [one] one parked
       *[other] { $parked } parked
    }
desk-header_idle = Nobody on the line · { $calls ->
        [0] none parked
        [one] one parked
       *[other] { $calls } parked
    }
desk-saved = saved
desk-unsaved_yet = NOT SAVED YET
desk-new_call = not begun
desk-idle = Nobody is on the line. Type .new when the telephone rings, or .take and the code of a call that goes on.

desk-banner = DANGER: { $signs }. Read out the steps; not yet confirmed off.
desk-banner_out = DANGER: { $signs }. Everybody goes out and stays out; nobody touches the oven or a switch.
desk-banner_hurt = SOMEBODY IS HURT: { $emergency_line } first, the oven later.
desk-banner_off = DANGER STANDS: { $signs }. Confirmed off at { $time }. Nobody switches it on again.
desk-banner_open = Danger was heard and isn't settled: ask this first.
desk-banner_open_out = Danger was heard and isn't settled: ask this first. In doubt everybody goes out.

desk-not_to_be_read_out = NOT TO BE READ OUT
desk-as_it_stands = As it stands: { $headline }
desk-would_change = Would change it:
desk-facts = Known so far (.change NUMBER)
desk-nothing_known = Nothing is known yet.
desk-pick = Which one? Type its number; Enter alone leaves it.
desk-calls = Calls at this desk. A number takes one; Enter alone leaves it.
desk-on_line = on the line
desk-call_parked = parked
desk-call_in_danger = parked — DANGER NOT SETTLED
desk-call_ended = ended
desk-ended = The call is over. Whoever goes on with it needs its code: { $code }. The next call: .new
desk-something = something in the log

desk-ground_danger = Asked now: danger comes first.
desk-ground_finding = Asked now: the answers so far call for it.
desk-ground_order = Asked now: it belongs to the beginning or the end of every interview.
desk-ground_likely_danger = Asked now: something dangerous is likely enough to be looked into.
desk-ground_worth = Asked now: its answer is worth more than it takes.
desk-ground_way = Asked now: it opens the way to “{ $to }”.
desk-ground_little_known = Asked now: next to nothing is known, and this tells most.
desk-ground_ending = Asked now: what will likely be advised waits for it.
desk-ground_offer = Offered now: this measurement would tell most before the visit.
desk-ground_yours = Asked now because you chose it.
desk-ground_call = Part of every call.

desk-hint_number = A number; alone it is taken in { $unit }.
desk-hint_choices = Several numbers may be typed, such as 1 3.
desk-hint_text = Type what they say.
desk-hint_lamp_log = Times and changes in one line, such as 0:00 lit; 9:40 out; 12:10 lit; 30:00 end
desk-hint_temperature_log = Times and readings in one line, such as 5:00 90 C; 10:00 140 C; 20:00 175 C
desk-hint_browning = Shades from 0 to 5, row by row, such as top 333 332 221; underside 110 110 000
desk-standing = Answered before: { $answer }

desk-nobody_on_line = Nobody is on the line: .new or .take CODE.
desk-nothing_open = Nothing is asked just now.
desk-nothing_found = No question with “{ $sought }”. Try one other word.
desk-no_such_word = No such word. There are { $words }
desk-not_in_list = The list has { $lines ->
        [one] one line
       *[other] { $lines } lines
    }. Enter alone leaves it.
desk-word_unclear = Which one: { $words }
desk-unclear = Not understood: a number, or the words of a choice.
desk-unclear_between = Which one: { $candidates }
desk-unclear_one = Did they mean “{ $candidates }”? yes takes it.
desk-unclear_in_danger = Not understood: { $question } A number will do, or in doubt .unsure: then it counts as danger.
desk-unclear_hurt = Is anybody hurt? A number will do. If somebody is, { $emergency_line } comes first.
desk-number_unclear = A number is wanted, in { $unit }.
desk-taken_as = Taken as: { $answer }
desk-danger_not_skipped = A question about danger isn't skipped. Not sure is an answer: .unsure
desk-heard_ask = That speaks of danger. Ask this at once; nobody goes to the oven meanwhile.
# Of burns: first aid as the health service advises it, from memory.
desk-hurt = Read out: “Call { $emergency_line } first if anybody is badly hurt. Cool a burn under cool running water for 20 minutes. After an electric shock see a doctor, even if all seems well. Do not touch the oven again.”
desk-heard = That speaks of danger. Read out what to do.
desk-heard_unclear = That may speak of danger. Ask this first.
desk-not_now = It may not be asked as things stand: { $question }
desk-noted = Noted.
desk-note_empty = What is to be noted? .note TEXT
desk-parked_in_danger = Parked with danger NOT SETTLED. Take it back first of all.
desk-parked = Parked. Everything is kept.
desk-taken = On the line. { $answered ->
        [0] Nothing is known yet.
        [one] One answer is known; nothing is asked twice.
       *[other] { $answered } answers are known; nothing is asked twice.
    }
desk-other_rules = It was held under other rules. Weighed anew by today's: { $headline }
desk-code_unknown = No call has that code.
desk-code = The code of this call: { $code }. Whoever has it goes on where you are: another desk, or the customer.
desk-heard_later = That speaks of danger too. It is asked as soon as this is settled.
desk-still_on = Take it to be on: everybody keeps away from it. Who can't switch it off safely calls { $network_line } or an electrician.
desk-left_on = It must not stay on. Ask them to switch it off now, and tell you when it is.
desk-now_on_line = On the line now: { $who }
desk-only_from_outside = First they go out. Ask the rest only once they are outside; else let them hang up and call.
desk-reckoned = likely by the answers: { $sign }
desk-code_unknown_here = Its code isn't known at this desk. Another desk takes it by .take { $code }
desk-moved_on = Somebody else went on with this call: { $changed }. Nothing was overwritten; ask what is open now.
desk-danger_was_heard = danger was heard: { $sign }
desk-counts = What you typed of danger counts all the same.
desk-not_kept = Not kept, for it was typed while the store was away: { $lost }
desk-unsaved = { $number ->
        [one] One entry is
       *[other] { $number } entries are
    } not saved yet, for the store can't be written. They are tried again with the next line, or by .save
desk-clock_went_back = This computer's clock went back: it stands { $minutes ->
        [one] a minute
       *[other] { $minutes } minutes
    } before what was told already. The order is kept; please put the clock right.
desk-all_saved = Everything is saved.
desk-leave_unsaved = Something isn't saved yet. .save tries again; .leave all leaves it behind.
desk-erased = This call was erased by somebody else. It goes on here, but isn't kept.
desk-store_unusable = The store can't be used: { $reason }. Nothing of that line was done.
desk-more = ↑{ $above } ↓{ $below } PgUp PgDn
desk-more_beside = … { $lines } more lines: .all
desk-line_stays = Type on to replace it; ← to mend it; F4 to note it
desk-said = They said: “{ $line }”
desk-left_behind = { $number ->
        [one] One entry was left behind
       *[other] { $number } entries were left behind
    } that could not be saved.
desk-more_steps = ↓ PgDn: more steps, read them first
desk-then_ask = Then ask: { $question }
desk-ways_back = Calls that may go on, by .take at a desk or “ovenside resume”:
