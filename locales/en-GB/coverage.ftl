# What simulated interviews make of each cause, for whoever edits the rules.

coverage-simulated = Simulated from these rules' own tables: every oven and every answer behaves exactly as the tables say. It shows whether the rules agree with themselves and what their questions can tell apart. It never shows how often the program would be right about real ovens.
coverage-plan = { $causes ->
    [one] 1 cause
   *[other] { $causes } causes
 }, { $ovens } ovens of each, seed { $seed }, { $mistakes } % of the answers mistaken on top; a householder is asked. With so many ovens a share may be off by { $off } points.
coverage-working = interviews

coverage-columns_first = leads
coverage-columns_three = in three
coverage-columns_served = served
coverage-columns_stopped = stopped
coverage-columns_questions = questions: median, most
coverage-causes = Each cause where it is alone: how often it is named first, how often among the first three, how often the verdict serves it, how often danger was told or likely and stopped it, and how many questions are asked until then. A stop serves a dangerous cause and no other. The worst stand first.
coverage-elsewhere = { $cause }: in { $region }, since no oven has what it needs in the region that was asked for.
coverage-share = { $percent } %

coverage-instead = Named first in fewer than { $least } % of their own interviews, and what is named first instead, and why:
coverage-instead_row = { $cause }  { $leads } %  instead: { $names }; { $why }
coverage-why_stopped = stopped in { $percent } %
coverage-why_twin = nearest { $cause }, { $decibans } decibans{ $seen ->
    [no] , which a householder can't see apart
   *[yes] {""}
 }
coverage-instead_name = { $cause } { $count }
coverage-instead_none = Every cause is named first in at least { $least } % of its own interviews.

coverage-pairs = Hard to tell apart: all that a householder may be asked speaks for the right one by less than { $least } decibans on average (by the tables; nothing is simulated here). The smaller direction counts.
coverage-pair_row = { $least }  { $first } / { $second }  ({ $one } and { $other }; best told by { $told_by }{ $same ->
    [yes] ; the same is done about both
   *[no] {""}
 })
coverage-pairs_none = No two causes are so hard to tell apart that all a householder may be asked speaks for the right one by less than { $least } decibans on average.

coverage-never_asked = Never asked in any of these interviews: { $questions }.
coverage-never_asked_none = Every question was asked in some interview.
coverage-never_asked_danger = Not counted: questions about danger signs, which are asked where danger is told, and those that a householder isn't asked.

coverage-cause_unknown = There is no cause “{ $found }” in these rules.
coverage-not_written = { $where } can't be written: { $reason }.
coverage-drawn = The picture is in { $where }.

coverage-title = What interviews make of each cause (simulated)
coverage-picture_note = Simulated from the rules' own tables, not measured: { $ovens } ovens of each cause, seed { $seed }. It shows what the questions can tell apart, not how often the program is right.
coverage-axis_shares = share of its { $ovens } interviews
coverage-axis_questions = questions asked
coverage-key_leads = named first
coverage-key_three = named second or third
coverage-key_neither = not among the first three
coverage-key_median = half the interviews ask no more
coverage-key_most = the longest one
coverage-heading_first = first
coverage-heading_served = served
