# Which assumed numbers decide how cases end, for whoever edits the rules.

assumed-method = Each number marked “assumed” is moved to each end of its range, one at a time. The cases' answers stay as they were given; no interview is held anew. Likelihoods in words move only with what the words mean.
assumed-numbers = { $numbers } numbers over { $cases } cases in { $where }; { $asking } more only decide which question is asked next and can't change anything here.
assumed-impossible = { $count ->
    [one] 1 end can't be moved to:
   *[other] { $count } ends can't be moved to:
 } the likelihoods beside them would no longer add up.
assumed-working = numbers
assumed-none = No number changes how a case ends.
assumed-found = { $count ->
    [one] 1 number changes how some case ends.
   *[other] { $count } numbers change how some case ends. Those that change most cases stand first, then those that move a probability most.
 }
assumed-number = { $file }: { $path } { $value } { $unit } ({ $least } to { $most }): { $cases ->
    [one] 1 case,
   *[other] { $cases } cases,
 } a probability moves by up to { $moved } points in { $case }
assumed-number_still = { $file }: { $path } { $value } { $unit } ({ $least } to { $most }): { $cases ->
    [one] 1 case
   *[other] { $cases } cases
 }
assumed-end = at { $value }: { $cases }
assumed-case = { $case } ({ $changes })
assumed-change = { $before } → { $after }
assumed-nothing = none
assumed-more = { $count ->
    [one] 1 more isn't shown
   *[other] { $count } more aren't shown
 }; see --most.
assumed-no_cases = There are no cases beside { $where }; name a folder of them with --cases.
