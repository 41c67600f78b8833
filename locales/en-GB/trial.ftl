# An interview with its trace on, for whoever edits the rules.

trial-begin = A trial with the rules in { $where }; nothing of it is kept. Type a choice's number or id (several with commas), a number, or words. You can also type: why · how · not sure · skip · back · stop
trial-question = { $number }. { $text }  [{ $id }]
trial-choice = { $number }  { $text }  [{ $id }]
trial-from_file = { $answer }  (from { $where })
trial-next_danger = Why this one: danger comes before anything else.
trial-next_finding = Why this one: the finding { $by } asks for it.
trial-next_order = Why this one: it is next in the order of the stage “{ $by }”.
trial-next_likely_danger = Why this one: dangerous causes together stand at { $percent } %, and it is expected to tell most about them in a minute.
trial-next_worth = Why this one: its answer is expected to save { $value } { $currency } and costs { $effort } { $currency } in minutes, care and patience. { $others ->
    [0] No other question is left.
    [one] One other question is left.
   *[other] Of { $others } others none is worth more.
 }
trial-next_way = Why this one: it opens the way to { $by }, whose answer is expected to save { $value } { $currency } and costs { $effort } { $currency } with those before it.
trial-next_little_known = Why this one: next to nothing is known yet, and of the common symptoms it tells most in a minute.
trial-next_offer = Why this one: somebody comes anyway, and { $by } would tell most of what is wrong. The household may say no.
trial-next_ending = Why this one: the ending that would cost least waits for it.
trial-next_then = Why this one: after a stop, whether the oven is off is asked.

trial-finding_new = + { $finding }, by { $by }
trial-finding_gone = − { $finding } holds no more
trial-care = care: { $before } → { $after }
trial-stop_new = stop: { $sign } ({ $source } { $by })
trial-stop_gone = stop lifted: { $sign }
trial-moved = { $name }  { $before } → { $after } %
trial-nothing = Nothing moved.
trial-measured = measured: { $decibans } dB for { $leader } against { $rival }, give or take { $error } for the few ovens simulated
trial-ranking_first = Before anything is told:
trial-share = { $name }  { $percent } %

trial-heard = Heard as danger: { $signs }.
trial-unclear = That isn't understood as an answer. Type a choice's number or id, or “not sure”.
trial-unclear_between = That may be { $candidates }. Type one's number or id.
trial-unclear_number = That isn't understood as a number. Type one in { $unit }, or “not sure”.
trial-nothing_before = There is no earlier answer to take back.
trial-taken_back = The answer to { $question } is taken back.
trial-not_here = In a trial that can't be done. Type “back” to take the latest answer back.
trial-not_taken = The answer to { $question } in { $where } isn't taken: { $reason }
trial-ended = The input ended before the verdict.
trial-left = Left before the verdict.

trial-verdict = Verdict after { $count ->
    [one] 1 question:
   *[other] { $count } questions:
 } { $headline }
trial-verdict_likely = Likely:
trial-verdict_because = Because:
trial-verdict_change = What would change it:
trial-verdict_endings = What each allowed way to end is expected to cost; the verdict takes the least:
trial-verdict_not_weighed = This verdict is not weighed against others: { $ground ->
    [stop] danger stops everything.
    [outside] a finding hands on.
   *[withdrawn] danger was told and then taken back.
 }
