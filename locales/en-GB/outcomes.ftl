# What cases turned out to be, for whoever keeps the outcomes and learns from them.

outcomes-recorded = Recorded of session { $id }: { $result }. Causes found: { $causes }.
outcomes-recorded_uncounted = Recorded of session { $id }: { $result }. It shows neither that a cause was there nor that none was, so it isn't counted.
outcomes-group_unknown = There is no group “{ $found }”. Use one of: { $valid }.
outcomes-result_unknown = There is no result “{ $found }”. Use one of: { $valid }.
outcomes-cause_unknown = There is no cause “{ $found }” in these rules. For a cause that they don't name, say “something_else”.
outcomes-causes_needed = With “{ $result }” name what was found: --found CAUSE. For a cause that the rules don't name, say “something_else”. Nothing was recorded.
outcomes-no_causes_wanted = With “{ $result }” no cause can be said to be found: leave --found out. A part that was fitted isn't a cause that was found. Nothing was recorded.
outcomes-not_outcomes = { $where } holds something other than outcomes. Nothing was added to it.
outcomes-not_written = { $where } can't be written: { $reason }. Nothing was recorded.
outcomes-not_read = { $where } can't be read: { $reason }.
outcomes-none = There is no outcome in { $where } that could be counted.
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
