# The summary that is read before a visit, by the engineer and by the household.

summary-title_engineer = Before the visit
summary-title_household = About your oven
summary-time = { $date } { $time } UTC

summary-heading_off = Is it off?
summary-heading_oven = Which oven
summary-heading_said = What the customer says
summary-heading_likely = What it probably is
summary-heading_tests = What to test first
summary-heading_bring = What to bring
summary-heading_unknown = What nobody knows
summary-heading_rests_on = What that rests on
summary-heading_all_causes = All that is still possible
summary-heading_measured = What was measured
summary-heading_answers = Everything that was said

summary-off_confirmed = The oven is off: { $how } (confirmed { $when }).
summary-off_not_confirmed = Danger was told, and nobody has confirmed that the oven is off.
summary-off_not_told = Nobody was asked to switch the oven off. It may be in use.
summary-sign_told = { $sign } (told { $when })
summary-sign_found = Follows from the answers: { $sign } (since { $when })
summary-sign_likely = Likely by the answers: { $sign } (since { $when })
summary-sign_withdrawn = Told and taken back: { $sign } (last { $when }). Look for it all the same.
summary-steps_told = What they were told to do:

summary-cavity = Cavities
summary-cavity_single = one
summary-cavity_upper = the upper one of two
summary-cavity_lower = the lower one of two
summary-plate_not_told = Maker, model, serial number and rating plate were not asked. Ask before ordering: some parts depend on the serial number.

summary-column_cause = Cause
summary-column_probability = Probability
summary-column_part = Part
summary-column_number = No.
summary-column_test = Test
summary-column_how = How, and what it should show
summary-column_minutes = Minutes
summary-column_time = When
summary-column_question = Question
summary-column_answer = Answer
summary-no_part = none
summary-percent = { $percent } %
summary-below_one = below 1 %
summary-nothing_leads = It is likelier than any fault that nothing is wrong.
summary-before_any_test = First isolate, lock off and prove dead.
summary-after_repair = After the repair: earth, insulation, polarity, then every function. Local rules come first.
summary-bring_generic = By kind only. The part's number hangs on the plate.
summary-would_change = What would change the verdict:
summary-two_at_once = Two at once:
summary-pair = { $first }, and { $second }: { $percent }
summary-changed_answers = { $number ->
    [one] One earlier answer was changed or taken back.
   *[other] { $number } earlier answers were changed or taken back.
}

summary-heading_found = What was found
summary-heading_steps = What to do now, in this order
summary-heading_may_be = What it may be
summary-heading_until_then = Until somebody comes
summary-heading_use_it_well = Using it well
summary-heading_to_hand = What to have to hand
summary-heading_you_said = What you told us
summary-watch_for = Switch the oven off and leave it off if it trips, sparks, smells of burning, gets far too hot, or does not go off.
summary-no_panel = Please take no panel off, do not pull the oven out, and do not measure anything electrical.
summary-in_doubt_off = If in doubt, leave it off.
summary-food = Food that stood lukewarm for hours: in doubt, throw it away. Be firmer with it for infants, and for people who are pregnant, frail or ill.
summary-hand_plate = Maker, model and serial number. They are on a plate you often see when the door is open. Read it with the oven cold. Do not unscrew anything to find it.
summary-hand_receipt = The receipt, and any guarantee or cover plan.
summary-hand_way = How to get in: floor, parking, and an adult who will be there.
summary-not_made = The summary could not be written: { $reason }.
summary-written = The summary is in { $where }.
summary-footer = { $title }, session { $session }, as of { $when }
summary-page_of = { $page } of { $pages }
summary-needs_file = A PDF can't be shown here. Please say where to write it: --to FILE.pdf
