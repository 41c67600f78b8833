# What cases turned out to be, for whoever keeps the outcomes and learns from them.

result-mended = mended, it works again
result-advised = advised how to use or set it
result-not_worth_mending = not worth mending
result-no_fault_found = no fault found, nothing was wrong
result-no_access = no access, nobody could look at it
result-not_fixed = not fixed, and nobody knows the cause
result-cancelled = cancelled
result-back_within_30_days = back within 30 days, so what was found before is not to be trusted

outcomes-recorded = Recorded of session { $id }: { $result }. Cause found: { $causes }.
outcomes-recorded_uncounted = Recorded of session { $id }: { $result }. It shows neither that a cause was there nor that none was, so it isn't counted.
outcomes-nothing_recorded = Nothing was recorded.
outcomes-moved_on = Somebody else wrote in this session meanwhile. Nothing was recorded; please do it again.

outcomes-told = What came of it, told on { $on }: { $result }
outcomes-told_causes = cause found: { $causes }
outcomes-told_part = part fitted: { $part }
outcomes-told_minutes = { $minutes ->
    [one] 1 minute
   *[other] { $minutes } minutes
 } at the oven
outcomes-told_note = note: { $note }

# What can't be so.

outcomes-result_needed = It wasn't told how it ended. Give a result, one of: { $valid }.
outcomes-group_unknown = There is no group “{ $found }”. Use one of: { $valid }.
outcomes-result_unknown = There is no result “{ $found }”. Use one of: { $valid }.
outcomes-cause_unknown = There is no cause “{ $found }” in these rules. For a cause that they don't name, say “something_else”.
outcomes-part_unknown = There is no part “{ $found }” in these rules. Use one of: { $valid }.
outcomes-causes_needed = With “{ $result }” name the cause that was found. For one that the rules don't name, say “something_else”.
outcomes-no_causes_wanted = With “{ $result }” no cause can be said to be found. A part that was fitted isn't a cause that was found.
outcomes-second_without_first = There is a second cause, but no first one. Give the cause found first.
outcomes-same_cause_twice = The second cause is the same as the first one. Leave it out, or give another.
outcomes-two_habits = Both causes are habits. Give at most one habit, the one that mattered more.
outcomes-part_without_visit = With “{ $result }” nobody was at the oven, so no part can have been fitted.
outcomes-minutes_wrong = “{ $found }” can't be the minutes. Give a whole number from 1 to { $most }.
outcomes-note_too_long = The note is too long. Please use at most { $most } characters.
outcomes-note_holds_card_number = The note holds what may be the number of a bank card. Please leave that out.

# The short form.

outcome_form-heading = Session { $id }, begun { $begun }. Enter skips a question; Ctrl-C leaves, and nothing is recorded.
outcome_form-before = Something was recorded before. What you tell now takes its place in counting; both stay in the session.
outcome_form-prompt = {"> "}
outcome_form-result = How did it end?
outcome_form-cause_found = Which cause was found? The likeliest by the answers stand here; for any other type words of its name.
outcome_form-second_cause = Was there a second cause? Number or words; Enter for none.
outcome_form-part_fitted = Which part was fitted? Number or words of its name; Enter for none.
outcome_form-minutes = How many minutes at the oven?
outcome_form-note = A note, in a line? Nothing about persons: no names, addresses or numbers.
outcome_form-no_such_number = There is no such number in the list. Please type one that is there, or words.
outcome_form-not_found = Nothing is called like that. Please try other words, or choose from here:
outcome_form-several = Several are called like that. Please choose, or type more words:
outcome_form-given_up = Nothing was recorded.

# Tables of outcomes.

outcomes-in_row = Row { $row }: { $said }
outcomes-in_row_and_column = Row { $row }, column { $column }: { $said }
outcomes-not_utf8 = This isn't text in UTF-8. Save the table as “CSV UTF-8”.
outcomes-row_unreadable = The row can't be read: a quotation mark is missing or stands where none belongs, or a cell is far too long.
outcomes-column_unknown = There is no column “{ $found }”. Use these, with commas or semicolons between them: { $valid }.
outcomes-column_twice = The column is there twice. Leave one out.
outcomes-column_missing = The heading has no such column, and it is needed.
outcomes-cells_wrong = There { $found ->
    [one] is 1 cell
   *[other] are { $found } cells
 }, but the heading has { $expected }. Text with commas or semicolons in it needs quotation marks around it.
outcomes-session_missing = The session is missing. Give its whole code, or at least { $least } characters of its id.
outcomes-session_too_short = “{ $found }” is too short to name a session for sure. Give its whole code, or at least { $least } characters of its id.
outcomes-session_unknown = There is no session “{ $found }”. Give its whole code, or as many characters of its id as no other session has, at least { $least }.
outcomes-session_twice = This session stands in row { $first } already. Keep the row that is right.
outcomes-import_mistakes = { $count ->
    [one] 1 mistake.
   *[other] { $count } mistakes.
 } Nothing was recorded.
outcomes-import_changed = Sessions were changed or erased while the table was read. Nothing was recorded; please do it again.
outcomes-import_no_rows = The table holds no rows, only a heading. Nothing was recorded.
outcomes-imported = { $new ->
    [one] 1 outcome was recorded
   *[other] { $new } outcomes were recorded
 }; { $known ->
    [0] none was known before.
    [one] 1 was recorded before and stays as it is.
   *[other] { $known } were recorded before and stay as they are.
 }
outcomes-import_dry = { $new ->
    [one] 1 outcome would be recorded
   *[other] { $new } outcomes would be recorded
 }; { $known ->
    [0] none was known before.
    [one] 1 was recorded before and would stay as it is.
   *[other] { $known } were recorded before and would stay as they are.
 } Nothing is recorded yet.
outcomes-exported = { $count ->
    [one] 1 outcome is
   *[other] { $count } outcomes are
 } in { $where }.
outcomes-export_kind_unknown = { $where } should end in .csv (a table) or .jsonl (lines to learn from).
outcomes-too_large = { $where } is larger than { $most } megabytes.
outcomes-not_written = { $where } can't be written: { $reason }.
outcomes-not_read = { $where } can't be read: { $reason }.
outcomes-none = There is no outcome that could be counted.
outcomes-line_left_out = Line { $number } is left out: { $reason }
outcomes-line_not_json = it isn't JSON.
outcomes-line_not_an_object = it isn't a JSON object.
outcomes-line_field_missing = “{ $field }” is missing.
outcomes-line_field_unknown = “{ $field }” is no part of an outcome.
outcomes-line_field_wrong = “{ $field }” can't be that.
outcomes-line_causes_needed = its result needs a cause in “causes_found”.
outcomes-line_no_causes_wanted = with its result no cause can be said to be found.
outcomes-cause_gone = “{ $cause }” is no cause of these rules, and is counted as something else.

learn-sessions = Outcomes until { $until }. Sessions: { $visited } visited, { $phone } solved by phone, { $unknown } of which nobody knows what came; these keep the expert's rates.
learn-group_unseen = Of the sessions “{ $group }” no outcome is counted. They keep the expert's rates, which may be too high for what the other group finds.
learn-row = { $cause }  { $before } % → { $after } %  ({ $low }–{ $high } %)  { $counts }
learn-count = { $found } of { $of } { $group ->
    [visited] visited
   *[solved_by_phone] solved by phone
 }
learn-no_rate_changes = No rate changes by a tenth of a percent.
learn-nothing_new = The rules hold all of this already.
learn-size_wrong = The sessions “{ $group }” can't be { $size }. Give a number from { $least }, of which there are outcomes, to { $most }.
learn-not_written = { $where } can't be written: { $reason }.
learn-written = Nothing is changed yet. Look at { $where }; then, in the folder of rules: patch -p1 < { $name }

calibration-cases = { $count ->
    [one] 1 outcome,
   *[other] { $count } outcomes, each
 } forecast with what those before it had taught.
calibration-scores = Scores (0 is perfect)             with the answers   from rates alone
calibration-brier_of_hypotheses = One explanation of all, Brier      { $answers }             { $rates }
calibration-log_of_hypotheses = One explanation of all, log        { $answers }             { $rates }
calibration-brier_of_causes = Each cause by itself, Brier        { $answers }             { $rates }
calibration-log_of_causes = Each cause by itself, log          { $answers }             { $rates }
calibration-leader = What was called most likely:
calibration-causes = Every cause in every case:
calibration-band = { $low } to { $high } %: { $count } times, said { $predicted } % on average, came true { $observed } % ({ $least }–{ $most } %)
calibration-title = What was called likely, and how often it came true
calibration-picture = Two reliability diagrams side by side. Marks on the dashed line were as likely as they were called; above it, likelier. The lines through the marks are 95 % intervals.
calibration-panel_leader = What was called most likely
calibration-panel_causes = Every cause in every case
calibration-axis_predicted = called so likely
calibration-axis_observed = came true
calibration-axis_counts = how many times it was called so likely
calibration-legend = Dashed: as often as it was called likely. Lines through the marks: 95 % intervals.
calibration-drawn = The picture is in { $where }.
