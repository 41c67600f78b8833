# Verdicts, what they rest on, and what would change them.

verdict-use_differently = Your oven seems to work. Try this: { $advice }
    .explain = Your answers fit an oven that works and is used in a way that doesn't suit the dish. Try the change once or twice. If nothing gets better, come back.
verdict-do_one_thing = One small thing to do: { $act }
    .explain = Your answers fit an oven that waits for this, or is hindered by it. It is safe to do yourself. If it doesn't help, come back and say so.
verdict-all_normal = Nothing you told us points clearly to a fault.
    .explain = What you told us is what an oven does when all is well, or nothing clearly wrong was found. If it goes on or gets worse, come back or have it looked at.
verdict-book_visit = Book a visit: { $who }.
    .explain = Your answers point to something that has to be measured or mended inside the oven. Please take no panel off and don't pull the oven out.
    .taken_back = What you told us before pointed to danger, and no longer does. We would rather have it looked at before the oven is used again. Please take no panel off and don't pull the oven out.
    .unknown = We couldn't find out enough to say more. If the oven cooks as you like, leave it be. If it doesn't, somebody can find out. Please take no panel off and don't pull the oven out.
verdict-maker_seller_or_landlord_first = Before you book anybody, tell { $first }.
    .explain = It may cost you nothing that way. Somebody else opening the oven first may cost you your rights. This is not legal advice.
verdict-stop_and_isolate = Stop. Please leave the oven alone and follow these steps in order.
    .explain = What you told us can be dangerous.
    .confirmed = Stop. The oven stays off until somebody qualified has looked at it.
verdict-outside = This needs somebody else: { $who }.
    .explain = We only know electric ovens. We won't guess about anything else.
verdict-signs_told = You told us: { $signs }.
verdict-signs_found = What you told us points to this danger: { $signs }.
verdict-then_call = Who should look at it: { $who }.
verdict-withdrawn_signs = What you told us before pointed to danger, and no longer does. We would rather have it looked at.
verdict-may_not_be_worth_mending = The oven is no longer young. Ask what a repair would cost before you agree to it.

urgency-emergency = Please don't wait with this.
urgency-soon = Have it looked at soon, and leave the oven off until then.
urgency-routine = There is no hurry. If one way of heating fails, do not use it until then. If the oven trips, sparks, smells or gets far too hot, switch it off and leave it off. If you feel a tingle or shock, do not touch it again; switch it off at the fuse box.

who-appliance_engineer = an appliance engineer
who-electrician = an electrician
who-hob_engineer = somebody who mends hobs
who-maker = the maker's service
who-registered_gas_engineer = a registered gas engineer
who-network_operator = the electricity network's emergency line
who-gas_emergency = the gas emergency line
who-fire_service = the fire service

first-maker = the maker (it is under guarantee)
first-seller = the shop that sold it
first-landlord = your landlord, in writing

band-very_likely = Very likely: { $cause }
band-likely = Likely: { $cause }
band-possible = Possible: { $cause }
band-one_of_several = Perhaps: { $cause }
band-or_unnamed = Or something that we could not put a name to

cause-none = nothing is wrong
    .trade = nothing wrong
    .explain = What you see is what an oven does.
cause-something_else = something that we could not put a name to
    .trade = none of the named causes
    .explain = Your answers fit none of the causes we know.

reason-sign = What you told us was this danger sign, or pointed to it: { $sign }.
reason-measured = What was written down at the oven: { $lines }.
reason-answer = You said “{ $answer }” to “{ $question }”

figure-probability = { $text } ({ $percent } %)
figure-decibans = { $text } ({ $decibans } decibans for the first against the second; without it the first stands at { $without } %)

answer-written_down = what was written down ({ $lines })
answer-in_own_words = in your own words
answer-from = { $least } { $unit } or more
answer-between = { $least } to { $most } { $unit }

change-answered = “{ $answer }” to “{ $question }” → { $action }
change-withdrawn = Another answer to “{ $question }” → { $action }
change-use_differently = use it differently
change-do_one_thing = one small thing to do yourself
change-all_normal = nothing points to a fault
change-book_visit = book a visit
change-maker_seller_or_landlord_first = tell the maker, shop or landlord first
change-stop_and_isolate = stop and switch it off
change-outside = somebody else's trade

care-talk = just talking
care-look_cold = looking at the cold oven
care-daily_use = using it as on any day
care-watch_hot = watching it hot through the closed door
care-open_hot = opening it hot, with oven gloves
care-engineer = measuring with the tools and training of an engineer

unit-percent = %
unit-minutes = minutes
    .also = minute | min | mins | minutes | m
unit-years = years
    .also = year | yr | yrs | years | y
unit-degrees_celsius = °C
    .also = c | °c | degrees | celsius | degrees c | deg | degrees celsius | centigrade
unit-watts = W
    .also = w | watt | watts
unit-kilowatts = kW
    .also = kw | kilowatt | kilowatts
unit-questions = questions
unit-seconds = seconds
    .also = second | sec | secs | seconds | s
unit-hours = hours
    .also = hour | hr | hrs | hours | h
unit-months = months
    .also = month | months | mth
unit-degrees_fahrenheit = °F
    .also = f | °f | fahrenheit | degrees f | degrees fahrenheit
line-unknown = your local emergency number

# The lines that are kept of a measurement.
written-lit = lit
written-out = out
written-end = end
written-opened = opened
written-celsius = C
written-fahrenheit = F
written-top = top
written-underside = underside
