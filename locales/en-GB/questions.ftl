question-oven_is_off = Is the oven off now? How did you switch it off?
    .how = Its clock and lights should be dark. Do not switch it on again to check. After a fire or a smell of gas, touch no switch and answer from outside.
    .why = We go on only when the oven is safely off.
    .off_at_switch = Off at its switch on the wall
    .off_at_switch-words = wall switch | the wall switch | the switch | at the wall | cooker switch | switch | socket | at the switch | off at the wall | wall | i turned it off at the wall | yes at the wall | yes at the switch
    .off_at_breaker = Off at its breaker in the fuse box
    .off_at_breaker-words = breaker | the breaker | at the breaker switch | fuse box | the fuse box | consumer unit | at the board | i turned off the breaker | off at the fuse box | off at the breaker | yes at the breaker | at the breaker | yes the breaker | yes at the fuse box
    .off_at_main = Off at the main switch
    .off_at_main-words = main switch | mains | everything is off | whole house | main | the main switch | off at the mains
    .off_by_plug = Off, for its plug is out already
    .off_by_plug-words = i pulled the plug | plug is out | unplugged | unplugged it | i unplugged it | plug | pulled the plug | the plug is out
    .off_some_way = It is off, but I can't say how
    .off_some_way-words = yes | off | it is off | it's off | yes it's off | yes it is off | yes off | yes still off | still off | all off | it is off now | yes it's off now
    .still_on = No, it is still on
    .still_on-words = no | still on | on | left it alone | can't reach it | could not | no luck | it is still on | i had to leave it alone | i can't | not yet | nope

question-what_goes_wrong = What goes wrong with the oven?
    .how = Think of the last few times. You need not try it now.
    .why = It tells us which questions to ask first.
    .nothing_comes_on = Nothing comes on at all
    .nothing_comes_on-words = nothing happens when i turn it on | it is completely dead | dead | nothing comes on | no power | completely dead | nothing works | it's dead | nothing at all | no lights | won't turn on | won't come on
    .no_heat = The light or clock comes on, but there is no heat
    .no_heat-words = no heat | stays cold | won't heat | not heating | cold | it stays cold | no heat at all | it won't heat up | doesn't heat up | never gets warm | it never gets warm | does not get warm | doesn't get warm | never gets hot | stone cold
    .too_cold_or_slow = Food takes too long or is not done
    .too_cold_or_slow-words = too cold | slow | takes too long | takes ages | undercooked | lukewarm | raw in the middle | takes forever | takes longer | it takes longer | takes much longer | never done | not cooking properly | not done | slow to cook | too slow | takes an hour more | longer than it used to | longer than they used to
    .too_hot = Food gets too brown or burns
    .too_hot-words = too hot | burns | burnt | too brown | overcooked | bit too brown | a bit too brown | too dark
    .pale_below = The bottom of food stays pale or soft
    .pale_below-words = pale bottom | soggy bottom | pale underneath | bottom not done | soft base | raw underneath | bottom is raw | raw bottom | base is raw | soggy underneath | bottoms are raw | scones are raw underneath
    .pale_on_top = The top of food stays pale
    .pale_on_top-words = pale top | top stays pale | not brown on top | top not done
    .one_side = One side browns more than the other
    .one_side-words = one side | uneven | unevenly | lopsided | left side | right side | back burns
    .grill_weak = The grill is weak or does not work
    .grill_weak-words = grill | no grill | grill is weak | grill not working | toast
    .fan_trouble = The fan does not run, or scrapes
    .fan_trouble-words = fan | fan is noisy | fan stopped | fan not working | fan scrapes | fan rattles
    .blows_cold = The fan runs, but the air stays cold
    .blows_cold-words = blows cold | fan blows cold | cold air | fan but no heat
    .stops_midway = It starts well and then stops heating by itself
    .stops_midway-words = stops | stops midway | switches itself off | cuts out | goes off by itself | stops heating | turns itself off
    .light_or_clock = A light, the clock or the display behaves oddly
    .light_or_clock-words = light | clock | display | timer | error | fault code | code on the display | inside light | lamp | orange light | clock flashes | clock is flashing | small light stays on | light never goes out
    .door_trouble = The door or its seal does not fit well, or it stays locked
    .door_trouble-words = door | seal | door is locked | won't open | door gap | hinge | gasket | door doesn't fit | door does not fit | door leaves a gap
    .trips_electricity = It makes the electricity go off
    .trips_electricity-words = trips | fuse | breaker | electricity goes off | it trips | it keeps tripping | tripping | keeps tripping | it tripped | rcd | fuse blows | blows the fuse | trips the electrics
    .thermometer_disagrees = My own thermometer shows another temperature
    .thermometer_disagrees-words = thermometer | my thermometer | thermometer says | oven thermometer
    .a_worry = I only wonder whether something is normal
    .a_worry-words = is it normal that the fan runs on | is it normal that it ticks | is it normal | i wonder if it is normal | just wondering | noise | a question | steam | i just want to know if its normal | i just want to know if it's normal | is this normal | just want to know | i only wonder | only wondering | is that normal
    .something_else_wrong = Something else
    .something_else_wrong-words = something else | other | none of these

question-complaint_in_own_words = Please tell us in your own words what happens.
    .how = One or two sentences are enough. Leave out names and numbers of people.
    .why = If somebody comes to mend it, they read your words first.

question-which_worry = Which of these do you wonder about?
    .how = Think of what you see, hear or smell. You need not try it now.
    .why = Many things that seem odd are just how an oven works.
    .fan_runs_on = A fan runs on after cooking
    .fan_runs_on-words = fan runs on | fan keeps going | fan after cooking | blowing afterwards
    .fan_stops_with_door = The fan stops when I open the door
    .fan_stops_with_door-words = fan stops | stops when i open | door opens fan stops
    .ticking = It ticks while it warms up or cools down
    .ticking-words = ticking | ticks | clicking | pinging | creaks
    .steam_on_glass = Steam comes out, or the glass mists up
    .steam_on_glass-words = steam | misty glass | condensation | wet glass
    .no_glow = I see nothing glow at the bottom or the back
    .no_glow-words = no glow | nothing glows | not red | element not red
    .new_oven_smell = A new oven smells the first few times
    .new_oven_smell-words = new smell | smell | new oven smell | first use
    .light_goes_on_and_off = The small light goes on and off
    .light_goes_on_and_off-words = light goes on and off | light goes off | light off and on | lamp comes and goes
    .none = None of these
    .none-words = none | none of these | something else | no | nah | nope

question-how_it_began = How did the trouble begin?
    .how = Think back to when it last cooked well.
    .why = Parts often fail on one day, and wear shows little by little.
    .from_one_day = From one day to the next
    .from_one_day-words = suddenly | sudden | overnight | one day | all at once | just stopped | out of the blue | just like that | since the weekend | one morning | from one day
    .little_by_little = Little by little
    .little_by_little-words = gradually | slowly | bit by bit | over time | got worse | little by little | over weeks | over months | bit by bit over time | slowly over time | it crept up | getting worse
    .always_so = It was always like this
    .always_so-words = always | since it was new | never worked well | from the start | from new

question-since_when = Since when has it been like this?
    .how = A rough guess will do.
    .why = It helps whoever may have to look at it.
    .this_week = Since this week
    .this_week-words = today | yesterday | this week | few days | days | week | a week | since the weekend | the weekend
    .this_month = For some weeks
    .this_month-words = weeks | some weeks | this month | last month | a month | a week or two | two weeks | three weeks
    .longer = For longer
    .longer-words = months | years | longer | ages | a long time | always

question-which_dishes = Does it happen with one dish or with everything?
    .how = Think of two or three different things you cooked.
    .why = If only one dish fails, the oven itself is often fine.
    .one_dish = With one dish, or one kind of dish
    .one_dish-words = one dish | only cakes | only bread | just one | only pizza | one thing | just the grill | only the grill
    .everything = With everything I cook
    .everything-words = everything | all | all of it | all dishes | whatever i cook

question-how_often = Does it happen every time?
    .how = Think of the last few times you used the oven.
    .why = Trouble that comes and goes often means a loose or worn contact.
    .every_time = Every time
    .every_time-words = every time | always | yes | each time | all the time | most of the time | mostly | nearly always | nearly every time | almost always | usually | yeah | yep
    .now_and_then = Now and then
    .now_and_then-words = now and then | sometimes | on and off | no | not always | comes and goes | not every time | once in a while | it varies | nah | nope

question-what_changed = Did any of this happen just before it began?
    .how = Think of the days before it began.
    .why = A change before the trouble can point to its reason.
    .power_cut = The electricity was off for a while
    .power_cut-words = power cut | electricity was off | blackout | outage
    .moved_or_fitted = The oven was moved or newly fitted
    .moved_or_fitted-words = moved | fitted | new kitchen | installed | new oven | my grandson moved it | it was moved | we moved | moved it | moved house | we moved house | we moved in | it was fitted | pulled out | somebody moved it | it was pulled out
    .repaired = The oven was mended
    .repaired-words = repaired | mended | fixed | engineer came | new element
    .cleaned = The oven was cleaned well
    .cleaned-words = cleaned | oven cleaner | cleaning | scrubbed
    .new_tins_or_recipe = I used new tins or a new recipe
    .new_tins_or_recipe-words = new tins | new tin | new recipe | new tray | recipe
    .new_hob_or_appliance = A new hob or other large machine was fitted
    .new_hob_or_appliance-words = new hob | new appliance | new cooker | heat pump | car charger
    .flood_lightning_or_mice = Water came in, lightning struck, or mice chewed a cable
    .flood_lightning_or_mice-words = flood | lightning | mice | rats | leak | water came in
    .none = None of these
    .none-words = none | none of these | no | nothing changed | nothing | nope | nah | none of those | nothing like that | not that i know of | no nothing | nothing has changed

question-other_lights = When the oven is on, what do lights in other rooms do?
    .how = Say what you remember. You need not switch the oven on.
    .why = Lights that go bright and dim can mean a dangerous fault in the supply.
    .steady = They stay steady, or blink once as the oven comes on
    .steady-words = steady | normal | fine | nothing | blink once | they stay the same | stay the same | the same | no change | they don't change | nothing happens | they are fine | they're fine | no they don't | no difference
    .duller_at_times = They are duller than they used to be, at some hours
    .duller_at_times-words = duller | dull | darker in the evening | not so bright | a bit darker
    .bright_and_dim = They go bright and dim
    .bright_and_dim-words = bright and dim | flicker | dim | brighter | change | they change | they flicker | flickering | go dim | they go dim

question-ever_tripped = Did the oven ever make the electricity go off?
    .how = Ask others at home too. Do not try it out.
    .why = If it ever did, we will not ask you to run a test with a hot oven.
    .never = Never
    .never-words = never | no | not once | nope | nah | nevr | never ever | no never | it never did | it never has | never tripped | no it didn't | no it never did | not that i know of
    .once_long_ago = Once, long ago
    .once_long_ago-words = once | long ago | years ago | once long ago | once years ago | yes once years ago | once a long time ago
    .lately = Yes, lately
    .lately-words = yes | lately | recently | this week | again | often | yeah | yep

question-which_appliance = Which kind of oven is it?
    .how = The booklet or the label inside the door frame says so. A gas hob can sit over an electric oven.
    .why = We can only help with electric ovens.
    .built_in_knobs = One electric oven in a cupboard, with a knob for the temperature
    .built_in_knobs-words = built in with knobs | knobs | built-in knobs
    .built_in_digits = One electric oven in a cupboard, with the temperature in digits
    .built_in_digits-words = digits | display | built in with display | touch
    .double_knobs = Two electric ovens in one housing, with knobs
    .double_knobs-words = double oven | two ovens | double with knobs
    .double_digits = Two electric ovens in one housing, with digits
    .double_digits-words = double with display | two ovens with display
    .cooker_knobs = An electric cooker on the floor with its own hob, with knobs
    .cooker_knobs-words = freestanding cooker | cooker with knobs | standing cooker
    .cooker_digits = An electric cooker on the floor with its own hob, with digits
    .cooker_digits-words = cooker with display | cooker with digits
    .table_top = A small electric oven on the worktop
    .table_top-words = small oven | worktop oven | mini oven | table top
    .electric_oven = Another electric oven, or I can't say which
    .electric_oven-words = electric | electric oven | electricity | fan oven | yes its electric | electric dear | it's electric | its an electric oven | electric cooker | built-in electric oven | electric one | gas hob electric oven | all electric
    .gas_oven = A gas oven
    .gas_oven-words = gas | gas oven | burns gas
    .hob_only = Only the hob has trouble
    .hob_only-words = hob | hob only | cooktop | the rings on top | just the hob | only the hob
    .microwave = A microwave
    .microwave-words = microwave | combi microwave | microwave oven

question-functions_on_oven = Which of these pictures are on the knob?
    .how = Look at the knob that picks the way of heating. If you cannot see it well, say "not sure".
    .why = The pictures tell us which heaters your oven has.
    .conventional = A square with a line at the top and a line at the bottom
    .conventional-words = two lines | line top and bottom | top and bottom | conventional
    .fan_with_ring = A fan inside a circle
    .fan_with_ring-words = fan in a circle | circle and fan | fan in circle | ring
    .fan_assisted = A fan with a line above and a line below
    .fan_assisted-words = fan with two lines | fan between lines | fan and lines
    .base_only = One line at the bottom
    .base_only-words = bottom line | line at the bottom | one line bottom | bottom heat
    .base_with_ring = A fan in a circle with a line below
    .base_with_ring-words = fan circle and line | pizza | fan with line below
    .small_grill = A short zigzag line at the top
    .small_grill-words = short zigzag | small grill | half grill | small zigzag
    .full_grill = A long zigzag line at the top
    .full_grill-words = long zigzag | grill | full grill | big zigzag
    .grill_with_fan = A zigzag line at the top with a fan under it
    .grill_with_fan-words = zigzag and fan | grill and fan | grill with fan
    .defrost = A fan with a snowflake or drops
    .defrost-words = snowflake | defrost | drops | fan and snowflake
    .rapid_preheat = An arrow, or two lines beside a thermometer
    .rapid_preheat-words = arrow | fast | quick heat
    .eco = A leaf, or the word eco
    .eco-words = leaf | eco
    .keep_warm = A dish with waves above it
    .keep_warm-words = waves | keep warm | dish
    .light_only = A lamp
    .light_only-words = lamp | light

question-lamp_means = What does the small light on the front panel show?
    .how = Not the light inside the oven. The booklet says what the small light means.
    .why = On some ovens this light shows when the oven is heating. Then it can tell us a lot.
    .lit_while_heating = It is lit while the oven heats and goes out when it is hot
    .lit_while_heating-words = lit while heating | goes out when hot | heating light | on while heating
    .lit_when_hot = It comes on when the oven is hot enough
    .lit_when_hot-words = comes on when hot | lit when ready | ready light | on when hot
    .only_power = It is lit whenever the oven is on
    .only_power-words = the light stays on | it stays on | always on | power light | lit when on | on all the time
    .bar_or_beep = There is no light, but a bar, a mark or a beep when it is hot
    .bar_or_beep-words = bar | beep | mark | digits
    .no_lamp = There is no such light
    .no_lamp-words = no light | no | none | there isn't one | hasn't got one | nope | nah | no lamp

question-whose_oven = Whose oven is it?
    .how = In a rented home it may be the landlord's.
    .why = It decides who should be told first.
    .own = Mine, or my family's
    .own-words = mine | own | ours | my own | i own it
    .rented = It belongs to a rented home
    .rented-words = rented | landlord | landlord's | renting | tenant | rented flat | council's | rented from the council | the council's | i rent
    .someone_else = Somebody else's
    .someone_else-words = someone else | a friend's | my mother's | neighbour | not mine | my mum's | my mum's house | my dad's | my parents'

question-guarantee = Is the oven under a guarantee or a cover plan?
    .how = Many ovens have one or two years. Look for the bill or the plan if it is near.
    .why = If so, nobody else should open the oven first.
    .yes_from_maker = Yes, from the maker
    .yes_from_maker-words = maker | manufacturer | from the maker | under warranty | guarantee
    .yes_from_seller = Yes, from the shop or a cover plan
    .yes_from_seller-words = shop | seller | cover plan | insurance | from the shop
    .no = No
    .no-words = no | nope | too old | run out | expired | nah

question-age_of_oven = About how old is the oven?
    .how = A rough guess in years will do.
    .why = It helps to say whether mending it is worth the money.

question-person_at_oven = Are you near the oven now?
    .how = If not, we ask only what you remember.
    .why = We will not send you to look at things from afar.
    .yes = Yes
    .yes-words = yes | yeah | i am | right here | in the kitchen | yep
    .no = No
    .no-words = no | nope | at work | not at home | elsewhere | nah | not now | i'm not | i'm at work | i am not at home | no i'm not

question-may_look_cold = Is the oven off and cold, and would you have a look at it?
    .how = Cold means it has been off for at least two hours. You only look, and take nothing apart.
    .why = A look at a cold oven can tell a lot, and a warm one can burn you.
    .off_and_cold = It is off and cold, and I will look
    .off_and_cold-words = yes | off and cold | cold | i will look | it is cold | it is off and cold | it's off and cold | off and cold i'll look | off and cold i will look | yes it's off and cold | yes it is off and cold
    .still_warm = It is still warm
    .still_warm-words = warm | still warm | hot | still hot | i just used it
    .rather_not = I would rather not
    .rather_not-words = rather not | no | no thanks | not now | nah | nope

question-hot_gate = Later we may ask for a short test with a hot oven. Which of these hold?
    .how = All five must be true, or we leave the test out. That is quite all right.
    .why = A hot oven needs somebody beside it the whole time.
    .adult_stays = A grown-up stays in the kitchen the whole time
    .adult_stays-words = adult stays | i will stay | grown-up | i stay
    .no_child_or_pet_near = No small child and no pet comes near
    .no_child_or_pet_near-words = no child | no children | no pets | no kids
    .no_home_oxygen = Nobody here uses oxygen for breathing
    .no_home_oxygen-words = no oxygen | nobody uses oxygen | oxygen free
    .oven_empty = Nothing is in the oven but its shelf
    .oven_empty-words = empty | oven is empty | nothing in it
    .cooling_air_as_usual = Any fan that blows air out at the front works as it always has
    .cooling_air_as_usual-words = air as usual | cooling fan works | fan works | no such fan
    .none = None of these, or I do not want a hot test
    .none-words = none | no | no test | rather not | none of these | nah | nope

question-anything_comes_on = Does anything on the oven come on? A light, the clock or a fan?
    .how = Think of the light inside, the small light on the front, the clock and any fan. The hob does not count.
    .why = It tells us whether electricity reaches the oven.
    .yes = Yes, something comes on
    .yes-words = yes | light comes on | clock works | something | yeah | yep
    .nothing = No, nothing at all
    .nothing-words = no | nothing | dead | nothing at all | all dark | nah | nope

question-any_heat = Does the oven get warm in any way of heating?
    .how = Say what you remember. The light inside gives a little warmth too, and that does not count.
    .why = No heat at all has other reasons than too little heat.
    .gets_warm = Yes, it gets warm, at least a bit
    .gets_warm-words = yes | warm | a bit | lukewarm | some heat | grill works | yeah | yep | it gets warm | it gets hot | it heats | yes it gets warm | gets hot
    .stays_cold = No, it stays cold
    .stays_cold-words = no | cold | stays cold | stone cold | no heat | nah | nope | no it stays cold | freezing | not at all | nothing | it stays cold

question-wall_switch_position = Is the oven's switch on the wall on?
    .how = Many ovens have a large switch on the wall or in a cupboard. Look only. Do not pull the oven out.
    .why = It is easily knocked off by a pan or a cloth.
    .on = It is on
    .on-words = on | yes | it is on | switched on | red light is on | yeah | yep
    .off = It is off
    .off-words = off | no | it is off | switched off | nah | nope

question-clock_flashes = Does the clock flash?
    .how = Two dots that blink between hours and minutes are normal. Look whether the whole time flashes, or shows zeros.
    .why = After a power cut some ovens stay cold until the clock is set.
    .shows_time = It shows a time, right or wrong
    .shows_time-words = no | shows the time | steady | time | normal | nah | nope
    .flashes = It flashes, or shows only zeros or dashes
    .flashes-words = yes | flashes | flashing | zeros | blinking | dashes | yeah | yep
    .no_clock = My oven has no clock
    .no_clock-words = no clock | hasn't one | doesn't have a clock | not on mine | mine has none | there is no clock

question-timer_sign = Is the oven waiting for a set time?
    .how = Look at the clock. The letter A or the word "auto" means that it waits. A small hand or pot often means by hand.
    .why = An oven that waits for a set time stays cold, and nothing is broken.
    .by_hand = It works by hand, I see no A or "auto"
    .by_hand-words = by hand | hand | no a | manual | no auto | no | nah | nope
    .waits_for_time = I see the letter A, or "auto"
    .waits_for_time-words = auto | letter a | the letter a | automatic | yes
    .counts_to_start = It waits for a start time later on
    .counts_to_start-words = later start | start time | delayed | waits to start
    .shows_end = It shows that a timed cook has ended
    .shows_end-words = ended | end | finished | beeped | nought
    .no_clock = My oven has no clock that can end the cooking
    .no_clock-words = no clock | only a timer | hasn't one | doesn't have a clock | not on mine | mine has none | it only rings

question-underside_pale = With heat from above and below, how does the underside of food look?
    .how = Think of bread, pizza or a pie on a wire shelf. If you never use this way of heating, say "not sure".
    .why = It tells us about the heater below.
    .browned = Browned as it should be
    .browned-words = brown | browned | fine | good | normal | brown enough | nicely brown | it's fine | ok | as it should
    .a_bit_pale = A bit pale
    .a_bit_pale-words = a bit pale | pale | light | not brown enough | a little pale | bit pale | it's pale | pale ish | stays pale | it stays pale
    .white_or_raw = White, soft or raw
    .white_or_raw-words = white | raw | soggy | soft | not done at all | wet | it stays white | stays white | totally white | still white | it's white | all white | doughy | uncooked | it stays raw | not cooked

question-top_pale = With heat from above and below, how does the top of food look?
    .how = Think of a cake or a pie on the middle shelf. If you never use this way of heating, say "not sure".
    .why = It tells us about the heater above.
    .browned = Browned as it should be
    .browned-words = brown | browned | fine | good | normal | brown enough | nicely brown | it's fine | ok | as it should
    .a_bit_pale = A bit pale
    .a_bit_pale-words = a bit pale | pale | light | not brown enough | a little pale | bit pale | it's pale | pale ish | stays pale | it stays pale
    .white_or_raw = White, or not done at all
    .white_or_raw-words = white | raw | soft | not done at all | wet | it stays white | stays white | totally white | still white | it's white | all white | doughy | uncooked | it stays raw | not cooked

question-fan_cooks = How does the oven cook with the fan in a circle?
    .how = Think of the last time you used it. If you never do, say "not sure".
    .why = It tells us about the heater at the back.
    .cooks_well = It cooks well
    .cooks_well-words = well | good | fine | normal | cooks well | heats well | the fan heats well | with the fan it is fine
    .cooks_weakly = It cooks, but weakly
    .cooks_weakly-words = weak | weakly | slow | not so well | a bit
    .blows_cold = The fan blows, but there is no heat
    .blows_cold-words = cold | blows cold | no heat | only air | nothing
    .no_fan_heat = My oven has no fan heat
    .no_fan_heat-words = no fan | hasn't one | doesn't have a fan | not on mine | mine has none | there is no fan

question-fan_remembered = What does the fan inside the oven do?
    .how = The one behind the back panel, not the one that blows air out above the door. Say what you remember.
    .why = A fan that stands still and a fan that blows cold have different reasons.
    .runs = It runs as it always did, whatever it blows
    .runs-words = runs | it runs | it turns | it spins | blows cold | it blows cold | runs fine | as always | works
    .slow_or_noisy = It runs slowly, scrapes or squeals
    .slow_or_noisy-words = scrapes | it scrapes | squeals | it squeals | grinding | rattles | slow | noisy | it is noisy | loud
    .does_not_turn = It does not run
    .does_not_turn-words = does not run | doesn't run | doesn't turn | it does not turn | stopped | it stopped | silent | not running | dead

question-grill_browns = How does the grill brown toast?
    .how = Think of the last time. Some grills work only with the door as the booklet says.
    .why = It tells us about the heater in the roof.
    .browns_well = It browns well
    .browns_well-words = well | good | fine | normal | browns well
    .browns_weakly = It browns weakly, or only in part
    .browns_weakly-words = weak | weakly | slow | only in part | only the middle | only the edges
    .no_grill_heat = It does not get hot
    .no_grill_heat-words = cold | no heat | not at all | dead | nothing
    .no_grill = My oven has no grill
    .no_grill-words = no grill | hasn't one | doesn't have a grill | not on mine | mine has none | there is no grill

question-bottom_heat_alone = With bottom heat alone, how does the underside look?
    .how = Bottom heat alone is the picture with just one line at the bottom. If you never use it, say "not sure".
    .why = If the same heater works here, the heater itself is whole.
    .browned = Browned as it should be
    .browned-words = brown | browned | fine | good | normal | brown enough | nicely brown | it's fine | ok | as it should
    .a_bit_pale = A bit pale
    .a_bit_pale-words = a bit pale | pale | light | not brown enough | a little pale | bit pale | it's pale | pale ish | stays pale | it stays pale
    .white_or_raw = White, soft or raw
    .white_or_raw-words = white | raw | soggy | soft | not done at all | wet | it stays white | stays white | totally white | still white | it's white | all white | doughy | uncooked | it stays raw | not cooked
    .no_such_heat = My oven has no bottom heat alone
    .no_such_heat-words = hasn't one | no such setting | doesn't have it | not on mine | mine has none | there is no such

question-less_done_than_meant = How long does food take, against what the recipe says?
    .how = Think of things you have cooked often.
    .why = It tells us how much heat is missing.
    .in_good_time = It is done in good time
    .in_good_time-words = in time | fine | normal | good | as it says | on time | same as ever | same | as usual | the usual time
    .bit_longer = A bit longer
    .bit_longer-words = a bit longer | a little longer | longer | ten minutes more | slightly | it takes a bit longer | a little bit longer | bit longer | a while longer
    .much_longer = Much longer
    .much_longer-words = much longer | far longer | twice as long | hours | ages | takes ages | takes forever | forever | double the time | twice the time | double | it takes longer than it did | longer than it did | way longer | a lot longer | it takes much longer | so much longer | loads longer | takes hours
    .never_done = It is never done
    .never_done-words = never done | never cooks | it never cooks | never cooked | stays raw | it stays raw | still raw | never gets done | doesn't cook at all | stone cold

question-browner_than_meant = How brown does food get, against what you meant?
    .how = Think of things you have cooked often, on the middle shelf.
    .why = It tells us whether there is too much heat.
    .as_meant = As I meant, or paler
    .as_meant-words = as meant | fine | normal | paler | good
    .bit_browner = A bit too brown
    .bit_browner-words = a bit too brown | a bit | slightly | browner | dark
    .burns_fast = It burns in minutes
    .burns_fast-words = in minutes | black | burns fast | it burns in minutes | burns in minutes | burns | burnt

question-slower_to_heat = How fast does the oven get hot now?
    .how = Compare it with how it used to be.
    .why = A slow oven often has a heater that no longer works.
    .as_before = As fast as it ever did
    .as_before-words = as before | same | normal | fine | as ever
    .slower = Slower than it did
    .slower-words = slower | slow | longer | takes longer | twice as long | not as quick as before | not as fast as before
    .hardly_gets_hot = It hardly gets hot
    .hardly_gets_hot-words = hardly | lukewarm | never gets hot | hardly gets hot | very slow

question-one_side_browner = Does one side get clearly browner than the other?
    .how = Think of a whole tray of the same biscuits. A small difference is normal.
    .why = It tells us whether heat escapes or air is held up.
    .even = No, or only a little
    .even-words = no | even | only a little | a little | same | nah | nope
    .uneven = Yes, clearly
    .uneven-words = yes | uneven | one side | clearly | left | right | back | yeah | yep

question-lamp_remembered = When you cook, what does the small light on the front do?
    .how = Not the light inside. If you never watched it, say "not sure".
    .why = The light shows when the oven calls for heat.
    .comes_and_goes = It goes on and off
    .comes_and_goes-words = on and off | comes and goes | cycles | goes off and on
    .never_goes_out = It never goes out
    .never_goes_out-words = never goes out | always on | stays on | on all the time | nevr goes out | it never goes out | stays lit
    .never_comes_on = It never comes on
    .never_comes_on-words = never comes on | never on | stays off | dark
    .out_very_soon = It goes out very soon
    .out_very_soon-words = out very soon | goes out soon | goes out early | too early

question-air_at_the_front = When the oven is hot, does a fan blow air out at the front?
    .how = Think of warm air above the door, or a fan that runs on after cooking. Do not try it out. Many ovens have no such fan.
    .why = This fan keeps the oven's own parts cool. Without it a safety switch can cut the heat.
    .still_blows = Yes, as it always has
    .still_blows-words = yes | still blows | as always | it runs on | fan runs on
    .never_had_it = It never had such a fan
    .never_had_it-words = never | no such fan | never had one | not on mine
    .no_longer = It used to, and no longer does
    .no_longer-words = no longer | it stopped | used to | not any more | it used to

question-hot_use_before = Did it stop right after the oven was used very hot?
    .how = Think of long grilling, the highest setting for long, or a hot cleaning.
    .why = Ovens have a safety switch that cuts the heat when they get too hot.
    .yes = Yes
    .yes-words = yes | yeah | after grilling | after cleaning | very hot | yep
    .no = No
    .no-words = no | nope | normal use | not really | nah

question-hot_before_it_stopped = In the days before it stopped heating, did it get too hot?
    .how = Think of food that burned or browned far too fast at the usual setting. Do not try it out.
    .why = A heat control that fails can make a safety switch cut all heat.
    .as_usual = No, it cooked as usual
    .as_usual-words = no | as usual | normal | fine | not really | nope | nah
    .burnt_things = Yes, things burned or browned too fast
    .burnt_things-words = yes | it burned things | burnt | too hot | browned too fast | yeah | yep | very hot

question-how_hot_it_starts = Is the oven hot before your food goes in?
    .how = Think of the dish that fails. Many ovens need ten to fifteen minutes.
    .why = Cakes, bread and pastry need a hot oven from the start.
    .hot_first = Yes, I let it get hot first
    .hot_first-words = yes | hot first | preheated | i preheat | heated | yeah | yep
    .from_cold = No, or only for a few minutes
    .from_cold-words = no | from cold | cold | few minutes | straight in | nah | nope

question-recipe_for_fan = Recipes give one number for each kind of oven. Which one do you set?
    .how = With the fan, most recipes need 20 degrees less. Check too that it is not in Fahrenheit or a gas mark.
    .why = A recipe for another kind of oven comes out too brown or too pale.
    .set_for_this_oven = The one for my way of heating
    .set_for_this_oven-words = right one | fan temperature | i change it | for my oven | 20 less
    .as_printed = Just the number I read first
    .as_printed-words = as printed | the number | first number | what it says | same as recipe

question-heating_chosen = Which way of heating do you use for the dish that fails?
    .how = Cakes and pies like heat from above and below, or the fan. The grill is for browning tops.
    .why = A dish can fail because another way of heating would suit it better.
    .suits_the_dish = One that suits it, as far as I can tell
    .suits_the_dish-words = suits | the right one | as recipe | fan | top and bottom
    .may_not_suit = The grill, bottom heat alone, or one that may not suit
    .may_not_suit-words = grill | bottom only | may not suit | always the same | defrost

question-shelf_height = Where is the shelf for the dish that fails?
    .how = The middle suits most cakes. Pizza and pies like it lower.
    .why = Near the top, tops burn. Near the bottom, tops stay pale.
    .middle_or_as_recipe = In the middle, or as the recipe says
    .middle_or_as_recipe-words = the middle one | middle shelf | the middle shelf | middle | as recipe | centre | as it says
    .very_high_or_low = Right at the top or right at the bottom
    .very_high_or_low-words = top | bottom | high | low | lowest | highest

question-size_of_tin = Is there a gap all round the tin or tray?
    .how = Air should pass on every side, about two fingers wide. The oven's own tray may fill its shelf.
    .why = Heat cannot pass a tin that fills the whole shelf.
    .gap_all_round = Yes, there is a gap
    .gap_all_round-words = yes | gap | there is room | small tin | yeah | yep
    .fills_the_shelf = No, it fills the shelf or touches the back
    .fills_the_shelf-words = no | fills it | touches | big tray | no gap | nah | nope

question-floor_of_oven = Is anything on the floor of the oven while you cook?
    .how = Think of foil, a baking stone, a liner or a tin.
    .why = It holds back the heat from below, and can harm the floor.
    .bare = No, the floor is bare
    .bare-words = no | bare | nothing | empty | nah | nope
    .something_on_it = Yes, something lies on it
    .something_on_it-words = yes | foil | stone | liner | tray | tin | yeah | yep

question-how_full = How full is the oven when it goes wrong?
    .how = Think of the dish that fails.
    .why = A very full oven needs more time, and browns unevenly.
    .one_shelf = One shelf, as usual
    .one_shelf-words = one shelf | usual | one tray | not full
    .very_full = Two shelves or more, or very full
    .very_full-words = full | very full | two shelves | crammed | packed

question-peeks = How often is the door opened while you cook?
    .how = A rough guess will do. Looking through the glass does not count.
    .why = Each time, much of the heat goes out.
    .hardly_ever = Once or twice
    .hardly_ever-words = once | twice | hardly ever | never | not often | nevr | seldom | hardly at all | not much
    .often_or_ajar = Many times, or it stays a little open
    .often_or_ajar-words = often | many times | a lot | ajar | a little open

question-look_over = Look at the cold oven from the front, with the door open. Do you see any of these?
    .how = Look only. Touch nothing inside. Close the door gently afterwards.
    .why = We want to be sure it is safe before you do anything else.
    .heater_split = A heater in the roof with a split, hole or blister
    .heater_split-words = split | hole | blister | heater split
    .panel_missing = The back panel or the cover of the light is missing
    .panel_missing-words = panel missing | cover missing | back panel | light cover
    .glass_cracked = Glass in the door that is cracked or loose
    .glass_cracked-words = glass cracked | cracked | loose glass | chipped glass
    .door_hangs = A door that drops or hangs on one side
    .door_hangs-words = door hangs | door drops | crooked door | hangs
    .scorch_marks = Brown or melted marks on a knob, switch or cupboard
    .scorch_marks-words = scorch marks | brown marks | melted | scorched
    .none = None of these
    .none-words = none | no | none of these | all fine | nothing | nah | nope

question-seal_look = How does the soft strip around the door opening look?
    .how = With the oven cold, look all round it. Many strips have a gap at the bottom on purpose.
    .why = Heat gets out where the strip is torn or flat.
    .whole = Whole and springy
    .whole-words = whole | fine | good | springy | ok
    .torn_flat_or_loose = Torn, flat, hard or hanging out
    .torn_flat_or_loose-words = torn | flat | hard | loose | hanging out | damaged

question-door_gap = Try a strip of paper in the cold door. Is it held all round?
    .how = Shut the door on the paper and pull gently. Try the left, the right and the top. Leave out the bottom.
    .why = Where the paper slips out, heat gets out too.
    .held_all_round = It is held at every place
    .held_all_round-words = held | yes | tight | everywhere | all round | yeah | yep
    .loose_somewhere = It slips out at one place or more
    .loose_somewhere-words = loose | no | slips out | falls out | one side | nah | nope

question-probe_look = Look for a thin metal rod inside the oven. Is it held in its clips?
    .how = It is as thin as a pencil, often high up at the right. Look, do not touch. If you cannot find it, say "not sure".
    .why = The rod feels the heat. If it hangs loose, the oven gets too hot or too cold.
    .in_its_clips = It is held in its clips
    .in_its_clips-words = held | in its clips | clips | yes | in place | yeah | yep
    .loose_or_touching = It hangs loose, or touches a shelf, a tin or the wall
    .loose_or_touching-words = loose | hangs | touches | no | fallen down | nah | nope

question-knob_feel = With the oven off, turn the temperature knob. How does it feel?
    .how = Leave the other knob at off. Turn this one gently to the highest number and back. If your oven has only one knob, leave it alone and say "not sure".
    .why = A knob that slips shows one heat and sets another.
    .firm = It turns firmly, from end to end
    .firm-words = firm | fine | good | normal | ok
    .slips_or_wobbles = It slips, wobbles or spins round
    .slips_or_wobbles-words = slips | wobbles | spins | loose | falls off

question-fan_sound = With the fan setting on for a minute, can you hear the fan inside at the back?
    .how = Shut the door and set the fan without looking inside. Listen at once, for the cooling fan above may start later. Then turn it off.
    .why = Without this fan, heat stays at the back of the oven.
    .runs = Yes, it runs
    .runs-words = yes | runs | i hear it | running | fine | yeah | yep
    .slow_or_scraping = It runs slowly, scrapes or stops again
    .slow_or_scraping-words = slow | scrapes | squeals | grinding | stops again
    .silent = No, it is silent
    .silent-words = no | silent | nothing | not running | dead | nah | nope

question-lamp_cycle = Watch the small light on the front panel for twenty minutes. What does it do?
    .how = Set heat from above and below, if you have it, and 180 degrees. Leave the oven empty and stay beside it. Watch through the shut door. Turn it off at once if you smell, see or hear anything odd. After twenty minutes, turn the oven off.
    .why = The light shows when the oven calls for heat.
    .cycles = It goes out, and later comes on again
    .cycles-words = on and off | comes and goes | cycles | goes out and comes back
    .never_out = It never goes out in the twenty minutes
    .never_out-words = never goes out | stays on | always on | on all the time
    .never_lit = It never comes on
    .never_lit-words = never comes on | stays off | dark | never lit
    .out_early = It goes out within about three minutes
    .out_early-words = goes out early | out early | very soon | three minutes

question-low_setting = Set the oven to about 100 degrees, from cold. Does the small light go out?
    .how = Stay beside it and leave the door shut. Wait at most ten minutes. Turn it off at once if you smell or see anything odd. Then turn the oven off.
    .why = At this low heat the light should soon go out. If it does not, the oven may not control its heat.
    .goes_out = Yes, it goes out
    .goes_out-words = yes | goes out | went out | out | yeah | yep
    .stays_lit = No, it stays lit
    .stays_lit-words = no | stays lit | stays on | still on | nah | nope

question-minutes_to_heat_up = From cold to 180 degrees, after how many minutes does the small light go out?
    .how = Start with a cold, empty oven and stay beside it. Stop after 30 minutes, and then answer 30. Turn it off at once if you smell or see anything odd. Then turn the oven off.
    .why = A slow oven often has a heater that no longer works.

question-grill_glow = Turn on the large grill for three minutes. How much of it glows?
    .how = Look through the shut glass, and only if your booklet grills with the door shut. If it does not, say "not sure". Stay beside it. Turn it off at once if anything seems odd. Then turn the oven off.
    .why = The grill is the one heater that you can see at work.
    .glows_all_over = It glows all over
    .glows_all_over-words = all over | all of it | whole | everything
    .glows_in_part = Only a part glows
    .glows_in_part-words = part | half | only the middle | only the outside | partly
    .stays_dark = It stays dark
    .stays_dark-words = dark | no | nothing | no glow | stays dark

question-bread_underside = Bake slices of bread on the wire shelf. How do the undersides look?
    .how = Use heat from above and below at 200 degrees, the middle shelf and no tray. Stay beside it, and stop when the tops are mid-brown or after 15 minutes. Turn it off. Look underneath when all is cool.
    .why = Bread shows heat from below better than anything else.
    .brown_below = As brown as the tops
    .brown_below-words = brown | same | as brown | both brown
    .paler_below = Clearly paler than the tops
    .paler_below-words = paler | pale | lighter | a bit pale
    .white_below = White
    .white_below-words = white | raw | not brown | no colour

question-lamp_two_answers = You told us two things about the small light. Which is right?
    .how = First is what you remembered. Second is what you saw when you watched it.
    .why = Both cannot be true every time, and you know best.
    .first = The first, what I remembered
    .first-words = first | the first | remembered | memory
    .second = The second, what I saw
    .second-words = second | the second | what i saw | watched
    .now_and_then = Both, it differs from time to time
    .now_and_then-words = both | now and then | it differs | sometimes

question-below_two_answers = You told us two things about the underside. Which is right?
    .how = First is what you remembered. Second is the bread you baked.
    .why = Both cannot be true every time, and you know best.
    .first = The first, what I remembered
    .first-words = first | the first | remembered | memory
    .second = The second, the bread
    .second-words = second | the second | bread | what i saw
    .now_and_then = Both, it differs from time to time
    .now_and_then-words = both | now and then | it differs | sometimes

question-power_two_answers = You told us that nothing comes on, and that it gets warm. Which is right?
    .how = First is that nothing comes on. Second is that it gets warm.
    .why = Both cannot be true every time, and you know best.
    .first = The first, nothing comes on
    .first-words = first | the first | nothing comes on | dead
    .second = The second, it gets warm
    .second-words = second | the second | gets warm | warm
    .now_and_then = Both, it differs from time to time
    .now_and_then-words = both | now and then | it differs | sometimes

question-knob_while_heating = Is the knob for the way of heating often turned while the oven heats?
    .how = Think of changing from fan to grill in the middle of cooking.
    .why = It may wear the switch over many years. It is only for a tip at the end.
    .often = Yes, often
    .often-words = yes | often | all the time | usually | yeah | yep
    .hardly_ever = No, or hardly ever
    .hardly_ever-words = no | never | hardly ever | not often | nah | nope | nevr

question-earlier_repairs = Was the oven ever mended before?
    .how = As far as you know.
    .why = It helps whoever may come to look at it.
    .never = Never
    .never-words = never | no | not that i know | nope | nah | nevr | never ever | no never | not that i know of | never it's new | it's new
    .once = Once
    .once-words = once | one time | yes once
    .several_times = Several times
    .several_times-words = several | twice | many times | often

question-access_for_visit = If somebody has to come, what should they know about getting in?
    .how = The floor, a lift, where to park, and when a grown-up is there. Please leave out codes for doors.
    .why = It saves a wasted journey.

question-anything_else = Is there anything else you want to tell us?
    .how = Anything you noticed. A few words are enough.
    .why = You know your oven best.

question-breaker_position = Is the breaker for the oven or cooker off?
    .how = Look at the fuse box, and touch nothing yet. The right switch is often marked "oven" or "cooker". Look at any switch with a test button too.
    .why = A breaker that is off for the first time is one thing. One that goes again is a danger.
    .on = It is on
    .on-words = on | it is on | no | up | all are on | nah | nope
    .off_first_time = It is off, for the first time as far as I know
    .off_first_time-words = first time | for the first time | never before
    .off_again = It is off again, or it will not stay on
    .off_again-words = again | off again | keeps going | will not stay on | several times
    .rcd_off = A switch with a test button is off
    .rcd_off-words = test button | rcd | rcd is off | the one with a test button | rcbo

question-display_sign = Does the display show a key, or a word for a lock?
    .how = Look for a small key, "loc" or "lock". Look for the word "demo" too.
    .why = A child lock or a shop's show mode keeps the oven cold, and nothing is broken.
    .only_time = Nothing like that
    .only_time-words = no | only the time | nothing | just the time | none | nah | nope
    .key_or_lock = A key, or a word for a lock
    .key_or_lock-words = key | lock | loc | yes | child lock
    .demo_word = The word "demo"
    .demo_word-words = demo | demo mode | demonstration | show mode
    .holiday_word = A word or sign for a rest day
    .holiday_word-words = holiday | rest day | candle | holiday word
    .probe_sign = The sign of a meat probe
    .probe_sign-words = probe | meat probe | probe sign
    .no_display = My oven has no display
    .no_display-words = no display | no clock | hasn't one | doesn't have a display | not on mine | mine has none

question-door_way = Is anything in the way of the door?
    .how = Think of a shelf that is not pushed in, a tray that is too deep, or a cloth.
    .why = Even a small gap lets the heat out.
    .nothing_in_way = No, nothing
    .nothing_in_way-words = no | nothing | free | clear | nah | nope
    .something_in_way = Yes, something is or was
    .something_in_way-words = yes | shelf | tray | cloth | something | yeah | yep

question-breaker_went_when = Was the oven on when the breaker went?
    .how = Say what you remember. Ask others at home too.
    .why = A breaker that goes while the oven heats often has a reason inside the oven.
    .found_later = No, or it was found off later
    .found_later-words = no | found off | found later | nope | nah | it was off already | after a storm
    .while_oven_on = Yes, it went while the oven was on
    .while_oven_on-words = yes | yeah | yep | while cooking | during cooking | it was on | in the middle of cooking

question-wrong_from_that_day = Did the oven work well after it was fitted, moved or mended?
    .how = Think of the first few things you cooked after that day.
    .why = A wire in the wrong place shows from the first day.
    .worked_at_first = Yes, it worked well at first
    .worked_at_first-words = yes | yeah | yep | at first | worked at first | it was fine at first
    .wrong_at_once = No, it was wrong from that day
    .wrong_at_once-words = no | nope | nah | from that day | straight away | never worked since | wrong at once

question-underside_with_fan = With the fan and a line above and below, how does the underside look?
    .how = Think of bread, pizza or a pie on a wire shelf. If you never use this way of heating, say "not sure".
    .why = It uses the same heater below, so it tells us whether that heater works.
    .browned = Browned as it should be
    .browned-words = brown | browned | fine | good | normal | brown enough | ok
    .a_bit_pale = A bit pale
    .a_bit_pale-words = a bit pale | pale | light | not brown enough | stays pale
    .white_or_raw = White, soft or raw
    .white_or_raw-words = white | raw | soggy | soft | not done at all | wet | stays white | it stays white

    .no_such_heat = My oven has no such setting
    .no_such_heat-words = hasn't one | no such setting | doesn't have it | not on mine | mine has none | there is no such

question-rest_of_home = Do the fridge and the lights in the kitchen work?
    .how = Look at things that were working this morning.
    .why = If nothing works, the oven is not to blame.
    .all_works = Yes, everything else works
    .all_works-words = yes | works | they work | all fine | everything else works | fridge works | lights work
    .kitchen_dead = Other things in the kitchen are dead too
    .kitchen_dead-words = kitchen dead | some things | fridge is off | sockets dead | part of the house | other things too
    .home_dead = Nothing works in the whole home
    .home_dead-words = nothing works | whole house | power cut | no electricity | everything is off | blackout

question-how_connected = How is the oven connected, as far as you can see?
    .how = Do not move the oven or anything else. If you cannot see it, say so.
    .why = A plug has a small fuse of its own.
    .by_plug = By a plug in a socket
    .by_plug-words = plug | socket | plugged in | normal plug
    .small_switch = By a small switch with a fuse in it
    .small_switch-words = small switch | fused switch | spur | switch with a fuse
    .large_switch = By a large switch on the wall, or straight from the fuse box
    .large_switch-words = large switch | cooker switch | red switch | big switch | straight from the fuse box
    .cannot_see = I can't see it
    .cannot_see-words = can't see | hidden | behind the oven | don't know

question-hob_works = Does the electric hob that belongs to the oven still heat?
    .how = Say what you remember. You need not try it now.
    .why = Oven and hob often share one supply.
    .works = Yes, it works
    .works-words = yes | works | hob works | the rings work | hob is fine
    .dead_too = No, it is dead too
    .dead_too-words = no | dead too | hob dead | neither works | both dead
    .some_rings = Only some of its rings heat
    .some_rings-words = some rings | half | some of them | only two | partly
    .no_hob_with_it = It has no electric hob
    .no_hob_with_it-words = no hob | separate hob | gas hob | it is on its own | none

question-other_cavity = Is there a second oven in the same housing, and does it work as it should?
    .how = Think of the last time you used it.
    .why = What both share is sound if the other one works.
    .works = Yes, and it works
    .works-words = works | yes it works | fine | other one works | top oven works | bottom oven works
    .same_trouble = Yes, and it has the same trouble
    .same_trouble-words = same | same trouble | both | both are bad | neither works
    .only_one = There is only one oven
    .only_one-words = only one | no | one oven | single | there isn't one

question-fault_code = Does the display show a letter with a number, or a warning sign that stays?
    .how = Do not clear it. Write it down if somebody may come.
    .why = Many ovens say by themselves which part troubles them.
    .no_code = No
    .no_code-words = no | nothing | just the time | normal | nope
    .code_stays = Yes, and it stays or comes back
    .code_stays-words = yes | code | error | a letter and a number | it stays | comes back | warning
    .no_display = It has no display
    .no_display-words = no display | hasn't got one | only knobs

question-display_health = How does the display look?
    .how = Say what you saw in the last few days.
    .why = A display that goes dark or restarts tells a lot.
    .as_usual = As usual
    .as_usual-words = usual | normal | fine | as always | ok
    .missing_or_odd = Parts are missing, or it shows odd signs
    .missing_or_odd-words = odd | scrambled | missing | half of it | strange signs | garbled | flickers
    .restarts = It goes dark or starts again by itself
    .restarts-words = restarts | resets | goes dark | comes back | loses the time | starts again
    .stays_dark = It stays dark
    .stays_dark-words = dark | blank | nothing | stays dark | off
    .no_display = It has no display or clock
    .no_display-words = no display | no clock | hasn't got one

question-buttons_answer = Do all the buttons or touch fields answer?
    .how = Dry hands and a dry panel answer best.
    .why = A panel that does not answer can look like a dead oven.
    .all_answer = Yes, all of them
    .all_answer-words = yes | all | they work | fine
    .some_do_not = Some do not, or only after many tries
    .some_do_not-words = some | some don't | only sometimes | have to press hard | one button
    .none_answers = None of them
    .none_answers-words = none | no | nothing happens | dead
    .only_knobs = It has only knobs
    .only_knobs-words = only knobs | knobs | no buttons

question-click_heard = When the oven starts to heat, do you hear a soft click from the control panel?
    .how = Say what you remember from other days.
    .why = The click is the switch that turns a heater on.
    .clicks = Yes
    .clicks-words = yes | clicks | a click | i hear it
    .no_click = No, not any more
    .no_click-words = no | no click | silent | not any more | used to

question-meat_probe_in = Is a meat probe plugged in, or is its socket open or wet?
    .how = The socket is a small hole in the side wall, often with a cap. Look when cold, do not touch.
    .why = Some ovens wait for the probe and do not heat as set.
    .out_and_capped = No, it is out and the cap is on
    .out_and_capped-words = no | out | capped | not plugged in
    .plugged_or_open = Yes, or the cap is off
    .plugged_or_open-words = yes | plugged in | cap is off | open | wet
    .has_none = This oven has none
    .has_none-words = none | hasn't got one | no probe | no socket

question-degrees_shown = Which letter stands behind the temperature on the display?
    .how = 200 with an F is not even 100 with a C.
    .why = The unit can be changed by mistake, often after a power cut.
    .letter_c = C, or numbers as always
    .letter_c-words = c | celsius | as always | normal
    .letter_f = F, or far higher numbers than before
    .letter_f-words = f | fahrenheit | higher numbers | 350
    .no_digits = No temperature in digits
    .no_digits-words = no digits | only a knob | none

question-own_correction = Did anybody change the oven's own temperature correction in its settings?
    .how = The booklet may call it offset or calibration. Ask others at home.
    .why = It makes every setting hotter or colder than it says.
    .never_changed = No
    .never_changed-words = no | never | nobody | not that i know
    .was_changed = Yes
    .was_changed-words = yes | changed | i did | we set it
    .has_none = This oven has no such setting
    .has_none-words = hasn't got one | no such setting | only knobs

question-power_setting = Was the oven set to use less power when it was fitted?
    .how = The fitter's note or the booklet may say so. Please do not change it yourself.
    .why = A limited oven heats slowly and is not broken.
    .full_power = No, or full power
    .full_power-words = no | full power | normal
    .limited = Yes, it is limited
    .limited-words = yes | limited | low power | reduced
    .has_none = This oven has no such setting
    .has_none-words = hasn't got one | no such setting | only knobs

question-stops_by_itself = Does the oven stop heating by itself before you want it to?
    .how = The small light may go on and off. That is usual and does not count.
    .why = How long it takes tells what may end it.
    .goes_on = No, it heats as long as I want
    .goes_on-words = no | goes on | keeps going | heats on | nope
    .after_minutes = Yes, within some minutes
    .after_minutes-words = minutes | soon | a few minutes | straight away | five minutes
    .after_half_an_hour = Yes, after twenty minutes to an hour
    .after_half_an_hour-words = half an hour | 30 minutes | twenty minutes | an hour | when it is hot
    .after_hours = Yes, after some hours
    .after_hours-words = hours | some hours | after a long time | three hours

question-vents_covered = Does anything cover the slots around the oven, such as a cloth, a tray or foil?
    .how = Look above and below the door, from outside.
    .why = An oven that cannot breathe gets too hot and switches off.
    .free = No, they are free
    .free-words = no | free | nothing | clear
    .covered = Yes
    .covered-words = yes | covered | towel | cloth | tray | foil

question-cupboards_hot = Do the cupboards or the knobs beside the oven get hotter than they used to?
    .how = Warm is usual. Too hot to keep a hand near is not. Do not touch to try it.
    .why = It tells whether the air around the oven can move.
    .as_ever = No, warm as ever
    .as_ever-words = no | as ever | warm | normal | usual
    .hotter = Yes, hotter than before
    .hotter-words = yes | hotter | very hot | hot
    .scorched = Yes, and something is brown or soft
    .scorched-words = brown | melted | soft | scorched | burnt

question-hot_clean_before = Did it begin right after the oven had cleaned itself with great heat?
    .how = Only the kind of cleaning that locks the door and leaves ash.
    .why = That heat can open a safety part or keep the door locked.
    .no = No
    .no-words = no | not | nope
    .yes = Yes
    .yes-words = yes | after cleaning | right after | self clean
    .cannot_do_that = It can't clean itself so
    .cannot_do_that-words = can't | hasn't got it | no such thing | only steam

question-door_locked = Does the door open?
    .how = Do not force it.
    .why = After hot cleaning a door can stay locked, and the oven then waits.
    .opens = Yes
    .opens-words = yes | opens | fine
    .stays_locked = No, it stays locked
    .stays_locked-words = no | locked | stuck | won't open | jammed

question-pizza_heat = Does the setting with a fan in a circle and a line below still bake well?
    .how = The line stands under the circle. It is often used for pizza.
    .why = If the back heater works there, the knob's switch is to blame.
    .bakes_well = Yes
    .bakes_well-words = yes | well | fine | good
    .weak = Weakly, or only from below
    .weak-words = weak | only from below | slowly | pale
    .stays_cold = It stays cold
    .stays_cold-words = cold | no | stays cold | blows cold
    .no_such_heat = It has no such setting, or I never use it
    .no_such_heat-words = no such setting | never used | hasn't got it

question-large_grill = With the large grill, does toast brown at the edges too, or only in the middle?
    .how = The large grill has a long zigzag. Say what you remember.
    .why = The edges are browned by the outer heater.
    .all_over = All over
    .all_over-words = all over | everywhere | edges too | evenly
    .only_middle = Only in the middle
    .only_middle-words = middle | only in the middle | centre
    .no_large_grill = It has no large grill
    .no_large_grill-words = no | hasn't got one | small grill only

question-hot_dishes = Is it worse at high settings, such as for pizza, than at low ones?
    .how = Think of something at 120 degrees and something above 220.
    .why = A dead heater shows most when much heat is needed.
    .fine_at_both = Both come out well
    .fine_at_both-words = both fine | fine | no | good at both
    .only_high_fails = Low is fine, high does not get hot enough
    .only_high_fails-words = high | only high | worse at high | pizza fails | yes
    .both_fail = Both are wrong by much the same
    .both_fail-words = both | both wrong | same everywhere | low too

question-set_higher = If you set the heat 20 or 30 degrees higher, does food come out right?
    .how = Say what you have tried on other days. You need not try it now.
    .why = Then the heaters are whole and only the setting is out.
    .right_then = Yes, then it is right
    .right_then-words = yes | then it's right | better | helps
    .still_wrong = No, it is still wrong
    .still_wrong-words = no | still wrong | no difference | doesn't help
    .never_tried = I never tried
    .never_tried-words = never tried | don't know | not tried

question-front_or_back = Is the front of a tray paler or darker than the back?
    .how = Think of a tray of biscuits that was not turned.
    .why = Heat that gets out at the door leaves the front pale.
    .alike = Much the same
    .alike-words = same | alike | even | no difference
    .front_paler = The front is much paler
    .front_paler-words = front paler | pale at the front | front
    .back_darker = The back is nearly burnt
    .back_darker-words = back burnt | back darker | back

question-reached_sign = When does the oven say that it has reached the set temperature?
    .how = A beep, a full bar or a mark. Say what you remember.
    .why = It tells whether the oven gets there, and whether it thinks so too soon.
    .in_good_time = After ten to twenty minutes
    .in_good_time-words = ten minutes | fifteen minutes | usual | in good time
    .hardly_ever = Hardly ever, or only after very long
    .hardly_ever-words = never | hardly ever | very long | after an hour
    .far_too_soon = Within two or three minutes
    .far_too_soon-words = at once | too soon | two minutes | straight away
    .no_such_sign = It says nothing
    .no_such_sign-words = nothing | no sign | doesn't say

question-which_light = Which light do you mean, the small one on the front or the one inside the oven?
    .how = The one inside lets you see the food.
    .why = Only the small one on the front tells about the heat.
    .small_front = The small one on the front
    .small_front-words = front | small one | on the panel | outside
    .inside_one = The one inside
    .inside_one-words = inside | the one inside | in the oven

question-inside_light = Does the light inside the oven come on?
    .how = Open the door, or switch it on as you always do. Do not touch the bulb or its cover.
    .why = It shows whether electricity reaches the oven.
    .comes_on = Yes
    .comes_on-words = yes | comes on | works
    .stays_dark = No
    .stays_dark-words = no | dark | dead | broken
    .has_none = It has none
    .has_none-words = none | hasn't got one

question-light_with_door = As you shut the door, do the light and the fan do what they always did?
    .how = Say what you remember.
    .why = A small switch feels the door. Some ovens stay cold if it fails.
    .as_ever = Yes
    .as_ever-words = yes | as ever | same | normal
    .odd_now = No, it is odd now
    .odd_now-words = no | odd | stays on | stays off | fan doesn't start

question-grill_door = How does the booklet want the door while grilling, and do you do it so?
    .how = If you have no booklet, say how you have always done it.
    .why = Some grills switch off if the door is not as the booklet says.
    .as_booklet = As the booklet says
    .as_booklet-words = as the booklet | yes | right | as it says
    .other_way = The other way round
    .other_way-words = other way | open | shut | the other | no

question-heat_after_off = After you switch it off, does the oven cool down?
    .how = Say what you remember. A fan that blows on is usual.
    .why = An oven that heats on must be cut off at the wall.
    .cools = Yes
    .cools-words = yes | cools | it cools down | fine
    .heats_on = No, it goes on heating
    .heats_on-words = no | goes on | stays hot | keeps heating

question-tins_made_of = What is the tin or dish made of?
    .how = Think of the dish that fails.
    .why = Dark metal browns beneath. Shiny metal, thick glass and silicone brown little.
    .dark_metal = Dark metal, or the oven's own tray
    .dark_metal-words = dark | metal | own tray | black tin | steel
    .shiny_glass_or_silicone = Shiny metal, foil, thick glass, stone or silicone
    .shiny_glass_or_silicone-words = shiny | glass | foil | ceramic | silicone | pyrex dish | stone

question-knob_on_mark = Does the function knob stand right on a picture, or between two?
    .how = Look from straight in front.
    .why = Between two marks the oven may not heat, or heat otherwise.
    .right_on_it = Right on a picture
    .right_on_it-words = right on | on it | on the mark | yes
    .between_two = Between two
    .between_two-words = between | in between | between two

question-paper_inside = Do you use loose baking paper or foil that the fan could draw in?
    .how = Paper that hangs over the tin, or lies there while the oven warms up.
    .why = It can cover the fan and stop the air.
    .held_down = No, or it is held down
    .held_down-words = no | held down | trimmed | none
    .loose = Yes, it is loose
    .loose-words = yes | loose | flaps | hangs over

question-things_stored = Do trays, pans or other things stay in the oven while you cook?
    .how = Only things that the dish does not need.
    .why = They soak up heat and hold back the air.
    .nothing_kept = No
    .nothing_kept-words = no | nothing | empty
    .things_kept = Yes
    .things_kept-words = yes | trays | pans | we keep things in it

question-where_thermometer = Where in the oven did your thermometer stand, and how long?
    .how = The middle of the middle shelf, for half an hour at least, is fair.
    .why = At the wall or the door it reads something else than the food feels.
    .middle_long_enough = In the middle, for half an hour or more
    .middle_long_enough-words = middle | in the middle | half an hour | centre
    .wall_door_or_short = At a wall or the door, or for a short time
    .wall_door_or_short-words = wall | door | hanging | few minutes | at the back | short
    .no_thermometer = I have none
    .no_thermometer-words = none | no thermometer | haven't got one

question-thermometer_says = What did your thermometer show against the setting?
    .how = Say roughly, after half an hour.
    .why = More than about 25 degrees off is worth a look.
    .much_the_same = Much the same, within 25 degrees
    .much_the_same-words = same | close | within 25 | near enough
    .far_lower = Much lower
    .far_lower-words = lower | colder | too low | less
    .far_higher = Much higher
    .far_higher-words = higher | hotter | too high | more

question-eco_used = Do you use the energy-saving setting?
    .how = It may say eco, or show a leaf.
    .why = It heats less and cooks with what heat is left.
    .not_used = No
    .not_used-words = no | never | don't
    .used = Yes
    .used-words = yes | eco | leaf | always
    .has_none = It has none
    .has_none-words = none | hasn't got one

question-cleaned_how = How was it cleaned?
    .how = Think of the last time before the trouble.
    .why = Strong cleaner harms the soft strip and the rod. Much water gets behind the walls.
    .gently = With a cloth, or a mild cleaner
    .gently-words = cloth | mild | soap | gently | washing up liquid
    .strong_cleaner = With strong oven cleaner, on the soft strip or the rod too
    .strong_cleaner-words = strong | oven cleaner | caustic | spray | foam
    .much_water = With a steam cleaner or much water
    .much_water-words = steam | water | steam cleaner | wet | hose

question-door_off_before = Was the door, or its glass, taken off or out before this began?
    .how = Somebody else may have done it, for cleaning.
    .why = A door that was put back wrong leaves a gap.
    .no = No
    .no-words = no | not | never
    .yes = Yes
    .yes-words = yes | door was off | glass was out | taken off

question-noise_where = Where does the noise come from?
    .how = Listen from a step away, with the door shut. Say what you remember.
    .why = There are two fans, and they fail in different ways.
    .no_noise = There is no odd noise
    .no_noise-words = none | no noise | quiet
    .inside_at_back = From inside, at the back
    .inside_at_back-words = inside | back | at the back
    .above_the_door = From above the door
    .above_the_door-words = above | above the door | top

question-function_knob_feel = Turn the function knob from picture to picture. Do you feel each step?
    .how = The oven is off and cold. Set it back to off.
    .why = A knob that slips leaves the oven as it was.
    .each_step = Yes, each step
    .each_step-words = yes | each step | firm | clicks
    .turns_freely = No, it turns freely or wobbles
    .turns_freely-words = no | freely | wobbles | loose | slips

question-knob_at_off = Turn the temperature knob fully back. Does its mark point at off?
    .how = The oven is off and cold.
    .why = A knob that points elsewhere shows a wrong heat all the way round.
    .at_off = Yes
    .at_off-words = yes | at off | at zero
    .beside_off = No, clearly beside it
    .beside_off-words = no | beside | next to it | past it
    .no_mark = It has no such mark
    .no_mark-words = no mark | none | no knob

question-trip_device = What went off?
    .how = Look at the fuse box without touching it, or say what you remember.
    .why = It tells the engineer what to measure first.
    .with_test_button = The switch with a test button
    .with_test_button-words = test button | rcd | big one | safety switch
    .single_breaker = One breaker without a test button
    .single_breaker-words = breaker | one breaker | small one | cooker breaker
    .both_in_one = One breaker that has a test button of its own
    .both_in_one-words = both | rcbo | combined | breaker with a button
    .fuse_in_plug = The fuse in a plug or a small switch
    .fuse_in_plug-words = plug fuse | fuse | in the plug

question-trip_moment = When did it go off?
    .how = Say what you remember. Please do not try it again.
    .why = The moment tells which part to look at first.
    .at_once = At once when the oven is switched on
    .at_once-words = at once | straight away | immediately
    .in_one_setting = Only with one way of heating
    .in_one_setting-words = one setting | only the grill | only with the fan | one function
    .while_warming = After some minutes of heating
    .while_warming-words = after a while | ten minutes | twenty minutes | when hot | some minutes
    .with_the_hob = When hob and oven are on together
    .with_the_hob-words = with the hob | together | both on
    .oven_was_off = While the oven was off
    .oven_was_off-words = off | it was off | overnight

question-trips_with_which = With which way of heating does it go off?
    .how = Say what you remember. Please do not try it again.
    .why = The heater that leaks is on then. It tells the engineer which one to bring.
    .bottom_heat = With heat from below
    .bottom_heat-words = below | bottom | from below | base
    .grill_or_top = With the grill, or heat from above
    .grill_or_top-words = grill | top | from above | grilling
    .fan_heat = With the fan and its heat
    .fan_heat-words = fan | fan oven | hot air
    .every_way = With every way I use
    .every_way-words = all | every one | any | always | whatever I choose
    .only_one_tried = I only ever use one
    .only_one_tried-words = only one | always the same | never tried others

question-long_unused = Had the oven been unused for some months before?
    .how = Or stood in a damp place.
    .why = Heaters that draw damp can make the electricity go off.
    .no = No
    .no-words = no | used it | used every week
    .yes = Yes
    .yes-words = yes | months | unused | empty flat | holiday home

question-grill_doses = Does the grill get less hot when you turn it down?
    .how = Say what you remember.
    .why = Some grills have a part that doses the heat, and it can stick.
    .less_when_turned_down = Yes
    .less_when_turned_down-words = yes | less | it does | gets less
    .full_at_every_mark = No, it is full on at every mark
    .full_at_every_mark-words = no | full | always full | can't turn it down

question-test_earth = Earth continuity, terminal to bare metal?
    .how = Isolated, locked off and proved dead. Low-resistance range, leads nulled. Well below 1 ohm is usual; see the maker's figure.
    .why = First after any tingle or shock.
    .low = Low, as it should be
    .low-words = low | good | ok
    .high_or_open = High or open
    .high_or_open-words = high | open | none

question-test_terminals = Terminal block and leads to the eye?
    .how = Isolated, locked off and proved dead. Discolour, soft insulation, loose screws.
    .why = A bad joint mimics half of all other faults.
    .sound = Sound and tight
    .sound-words = sound | tight | ok
    .loose_or_burnt = Loose or burnt
    .loose_or_burnt-words = loose | burnt | discoloured

question-test_links = Links and leads as the diagram says for this supply?
    .how = Isolated, locked off and proved dead. Compare with the label at the terminals.
    .why = Wrong links after fitting give weak or dead heaters.
    .as_diagram = As the diagram says
    .as_diagram-words = yes | right | ok
    .otherwise = Otherwise
    .otherwise-words = no | wrong | otherwise

question-test_supply = Volts at the terminals with a heater on?
    .how = Live: only if dead tests do not decide, and only by the competent. Nominal 230 volts per line; see the region's limits.
    .why = Tells the supply from the oven.
    .right = Within the limits, every line
    .right-words = right | ok | 230
    .low = Low under load
    .low-words = low | sags
    .a_line_missing = A line is missing
    .a_line_missing-words = missing | one line
    .no_volts = None
    .no_volts-words = dead | nothing | none

question-test_plug_fuse = Fuse in the plug or connection unit?
    .how = Isolated, locked off and proved dead. Continuity of the fuse out of its holder; its rating against the plate.
    .why = It blew for a reason; measure insulation before a new one.
    .whole = Whole
    .whole-words = whole | ok
    .blown = Blown
    .blown-words = blown | open

question-test_insulation = Insulation to earth of the heaters?
    .how = Isolated, locked off and proved dead; boards unplugged. 500 V d.c., all live poles joined, to earth; then each heater with both leads off. 1 megohm, or 0.3 with heaters on (DIN VDE 0701-0702, class I). If good cold, measure again warm, isolated anew.
    .why = Finds the heater that trips.
    .good = Good, every heater
    .good-words = good | high | ok
    .low = Low on one
    .low-words = low
    .near_nothing = Next to nothing on one
    .near_nothing-words = short | zero | nothing

question-test_base_element = Resistance of the base element, one lead off?
    .how = Isolated, locked off and proved dead. The volts on its own marking, squared and divided by its watts; cold within a few percent of hot. Without a marking, open or not is all it tells.
    .why = An open winding settles it.
    .near_marking = Near its marking
    .near_marking-words = near | ok | right
    .open = Open
    .open-words = open | infinite | no reading

question-test_ring_element = Resistance of the ring element, one lead off?
    .how = Isolated, locked off and proved dead. The volts on its own marking, squared and divided by its watts; cold within a few percent of hot. Without a marking, open or not is all it tells.
    .why = An open winding settles it.
    .near_marking = Near its marking
    .near_marking-words = near | ok | right
    .open = Open
    .open-words = open | infinite | no reading

question-test_top_element = Resistance of the outer upper element, one lead off?
    .how = Isolated, locked off and proved dead. The volts on its own marking, squared and divided by its watts; cold within a few percent of hot. Without a marking, open or not is all it tells.
    .why = An open winding settles it.
    .near_marking = Near its marking
    .near_marking-words = near | ok | right
    .open = Open
    .open-words = open | infinite | no reading

question-test_grill_element = Resistance of the grill element, one lead off?
    .how = Isolated, locked off and proved dead. The volts on its own marking, squared and divided by its watts; cold within a few percent of hot. Without a marking, open or not is all it tells.
    .why = An open winding settles it.
    .near_marking = Near its marking
    .near_marking-words = near | ok | right
    .open = Open
    .open-words = open | infinite | no reading

question-test_selector = Selector contacts, function by function?
    .how = Isolated, locked off and proved dead. Against the switching diagram; well below 1 ohm closed.
    .why = Tells the switch from its heaters.
    .all_close = All close
    .all_close-words = all | ok
    .one_below_open = The base element's stays open
    .one_below_open-words = base | below
    .one_above_open = The upper element's stays open
    .one_above_open-words = upper | above
    .one_fan_open = The ring element's stays open
    .one_fan_open-words = ring | fan
    .one_grill_open = The grill's stays open
    .one_grill_open-words = grill

question-test_thermostat_cold = Thermostat contacts cold, set to 200?
    .how = Isolated, locked off and proved dead. One lead off, turned past its first click.
    .why = Open here means no heat at all.
    .closed = Closed
    .closed-words = closed | ok
    .open = Open
    .open-words = open

question-test_thermostat_opening = Where does the thermostat open against its setting?
    .how = Calibrated probe at mid-cavity, mean of high and low after five cycles. Stay with it, and end it at 50 degrees above the setting. A setting of 100 may be tried dead, by its contact, with the bulb in boiling water.
    .why = Tells a drift from a contact that does not open.
    .near_setting = Near the setting
    .near_setting-words = near | ok
    .far_too_low = Far too low
    .far_too_low-words = low
    .far_too_high = Far too high
    .far_too_high-words = high
    .not_at_all = Not at all
    .not_at_all-words = never | not

question-test_thermostat_tube = Tube and bulb of the thermostat to the eye?
    .how = Isolated, locked off and proved dead. Along its whole length; the bulb in its own clips.
    .why = A kinked or empty tube fails towards heat.
    .straight = Whole
    .straight-words = whole | ok | straight
    .kinked_or_empty = Kinked, crushed or empty
    .kinked_or_empty-words = kinked | crushed | empty

question-test_probe_place = Probe in its own place, clear of wall and shelf?
    .how = Isolated, locked off and proved dead. Against the maker's drawing.
    .why = A displaced probe feels another heat.
    .in_place = In its place
    .in_place-words = yes | ok
    .displaced = Displaced
    .displaced-words = no | displaced | loose

question-test_cutout = Cut-out, cold?
    .how = Isolated, locked off and proved dead. Continuity. If open, find what made it act before it is reset or replaced.
    .why = It is a messenger.
    .closed = Closed
    .closed-words = closed | ok
    .open = Open
    .open-words = open

question-test_thermal_fuse = Thermal fuse?
    .how = Isolated, locked off and proved dead. Continuity. Never bridged.
    .why = Mostly gone after hot cleaning.
    .closed = Closed
    .closed-words = closed | ok
    .open = Open
    .open-words = open

question-test_sensor = Sensor resistance at room temperature?
    .how = Isolated, locked off and proved dead. Plug off at the board. A platinum 1000 reads about 1097 ohms at 25 degrees (IEC 60751); other types by their own table.
    .why = Tells the sensor from the board.
    .by_its_table = By its table
    .by_its_table-words = right | ok
    .open = Open
    .open-words = open
    .next_to_nothing = Next to nothing
    .next_to_nothing-words = short
    .off_its_table = Off its table by more than 2 percent
    .off_its_table-words = off | drifted

question-test_sensor_plug = Sensor plug and leads while moved?
    .how = Isolated, locked off and proved dead. Watch the reading while the plug is moved.
    .why = A loose plug comes and goes.
    .steady = Steady
    .steady-words = steady | ok
    .jumps = Jumps
    .jumps-words = jumps | loose

question-test_relay_output = Heater outputs of the board?
    .how = Live: only by the competent. Called for: present. Not called for: absent.
    .why = Tells the relay from its heater.
    .comes_and_goes = Comes and goes as it should
    .comes_and_goes-words = right | ok
    .never_comes = Never comes
    .never_comes-words = never | dead
    .always_there = Always there
    .always_there-words = always | welded

question-test_board = Control board to the eye?
    .how = Isolated, locked off and proved dead. Relays, their joints, the supply's capacitors.
    .why = Scorched relays show.
    .sound = Sound
    .sound-words = sound | ok
    .scorched = Marks of heat, or bulged
    .scorched-words = heat marks | marks of heat | blackened | bulged

question-test_oven_fan = Oven fan by hand, and its winding?
    .how = Isolated, locked off and proved dead. Spins freely, no play; winding not open.
    .why = Tells a worn bearing from a dead motor.
    .free = Turns freely, winding whole
    .free-words = free | ok
    .stiff = Stiff, or with play
    .stiff-words = stiff | play
    .dead = Winding open or seized
    .dead-words = dead | open | seized

question-test_cooling_fan = Cooling fan and its switch?
    .how = Isolated, locked off and proved dead. Spins freely, winding whole, its thermostat closes warm.
    .why = A still cooling fan opens the cut-out.
    .runs = Runs
    .runs-words = runs | ok
    .dead = Dead
    .dead-words = dead

question-test_programmer = Programmer contact, set to manual?
    .how = Isolated, locked off and proved dead. Some close only while powered; then by the competent.
    .why = Tells the programmer from its setting.
    .closes = Closes
    .closes-words = closes | ok
    .stays_open = Stays open
    .stays_open-words = open

question-test_door_switch = Door switch contact?
    .how = Isolated, locked off and proved dead. Pressed by hand, and by the door.
    .why = Tells the switch from the hinge.
    .closes = Closes
    .closes-words = closes | ok
    .stays_open = Stays open
    .stays_open-words = open

question-test_latch = Door latch, its motor and switch?
    .how = Isolated, locked off and proved dead. Moves by hand without force; switch changes over.
    .why = An oven that thinks it is locked stays cold.
    .moves = Moves and switches
    .moves-words = moves | ok
    .stuck = Stuck
    .stuck-words = stuck

question-test_grill_regulator = Grill regulator?
    .how = Isolated, locked off and proved dead: closed when turned on, open at off. It cycles only under power; then by the competent.
    .why = Tells the regulator from its heater.
    .cycles = Closes and cycles
    .cycles-words = ok | cycles
    .stuck = Stays open or shut
    .stuck-words = stuck | open | shut

question-test_air_gap = Air gaps of the housing against the fitting sheet?
    .how = Isolated, locked off and proved dead. The oven is drawn out by two people.
    .why = A housing without air opens the cut-out.
    .kept = Kept
    .kept-words = kept | ok
    .missing = Missing
    .missing-words = missing | closed

question-test_door_fit = Door fit: hinges and seal even all round?
    .how = Cold and off.
    .why = Tells seal, hinge and refitting apart.
    .even = Even
    .even-words = even | ok
    .gap = A gap
    .gap-words = gap

question-test_middle_temperature = Mean at mid-cavity, set to 180?
    .how = Never where it trips, smells or overheats. Calibrated probe, mean of high and low after five cycles, or of the steady state.
    .why = Says whether it heats wrongly at all.
    .near = Near the setting
    .near-words = near | ok
    .low = Low
    .low-words = low
    .high = High
    .high-words = high

question-test_spindle = Temperature knob's insert and spindle?
    .how = Isolated, locked off and proved dead. Insert whole, flat of the spindle not worn.
    .why = A knob that slips needs no thermostat.
    .grips = Grips
    .grips-words = grips | ok
    .worn = Worn
    .worn-words = worn | slips

question-test_indicator_lamp = Indicator lamp itself?
    .how = Volts across it while it should be lit: live, only by the competent. A neon reads open on a meter, sound or dead.
    .why = Tells a dead lamp from a cold oven.
    .good = Good
    .good-words = good | ok
    .dead = Dead
    .dead-words = dead

question-test_meat_socket = Socket of the meat probe?
    .how = Isolated, locked off and proved dead. Dry, springy, no tracking.
    .why = A wet socket reads as a probe.
    .dry = Dry and whole
    .dry-words = dry | ok
    .damaged = Wet, burnt or worn
    .damaged-words = damaged | wet

question-how_it_is_used = Which of these do you do with the food that fails?
    .how = Go through them all. Say 'none' if you do none of them.
    .why = Many ovens are sound, and one of these keeps the food from coming out right.
    .from_cold = I put it in before the oven is hot
    .from_cold-words = cold oven | from cold | no preheating | not preheated
    .as_printed = I set what the recipe says, for any kind of oven
    .as_printed-words = as printed | recipe | what the recipe says
    .high_or_low_shelf = I use the top or the bottom shelf
    .high_or_low_shelf-words = top shelf | bottom shelf | high | low
    .fills_the_shelf = The tin or tray fills the whole shelf
    .fills_the_shelf-words = big tray | fills the shelf | big tin
    .shiny_or_glass = The tin is shiny, or it is glass, stone or silicone
    .shiny_or_glass-words = shiny | glass | silicone | stoneware | stone dish | foil tray
    .several_shelves = I fill several shelves at once
    .several_shelves-words = several shelves | very full | two trays
    .on_the_floor = Foil, a stone or a tin lies on the oven floor
    .on_the_floor-words = foil | pizza stone | on the floor
    .loose_paper = Baking paper lies loose in it
    .loose_paper-words = paper | baking paper | loose paper
    .things_kept = Trays or pans stay in while it heats
    .things_kept-words = trays stay in | pans | things in it
    .saving_setting = I use the energy-saving setting
    .saving_setting-words = eco | saving | energy saving
    .door_opened = I open the door often to look
    .door_opened-words = open the door | look often | opening
    .none = None of these
    .none-words = none | none of these | no | nope | nothing

question-which_light_or_clock = What is odd about the lights, the clock or the display?
    .how = Say all that you have seen.
    .why = Each of them tells about another part.
    .small_light_stays_lit = The small light on the front never goes out
    .small_light_stays_lit-words = stays on | never goes out | always lit
    .small_light_dark = The small light on the front stays dark
    .small_light_dark-words = small light dark | light is dead | never comes on
    .clock_flashes = The clock flashes
    .clock_flashes-words = flashes | clock flashes | flashing
    .timer_shows = The clock shows auto, an A, or a time that is set
    .timer_shows-words = auto | letter a | timer | set time
    .code_shown = A letter with a number, or a warning, stays
    .code_shown-words = code | error | warning | letter and number
    .display_odd = The display is odd, or has parts missing
    .display_odd-words = odd | garbled | parts missing
    .display_restarts = The display goes dark and starts again
    .display_restarts-words = restarts | goes dark | starts again
    .display_dark = The display stays dark
    .display_dark-words = dark display | blank | display dead
    .buttons_deaf = Buttons or touch fields do not answer
    .buttons_deaf-words = buttons | touch | do not answer
    .light_inside_dark = The light inside does not come on
    .light_inside_dark-words = inside light | bulb | lamp inside
    .none = None of these
    .none-words = none | none of these | no | nope | nothing

question-lamp_watch = Could you watch the small front light from cold, for up to half an hour, and note when it changes?
    .how = The oven is cold and empty, and you stay with it. Choose heat from above and below, at 180 degrees. Switch on and start the clock at once. Note each time when the small light goes out or comes on. It is enough when it has gone out three times. Switch off at once if you see smoke, smell burning, or anything worries you.
    .why = A light that goes out late, early or never tells which part to look at. It is worth more than any number of guesses.

question-lamp_watch_low = Could you watch the small front light from cold at a low setting, for a quarter of an hour?
    .how = The oven is cold and empty, and you stay with it. Choose heat from above and below, at 100 degrees. Switch on and start the clock at once. Note when the small light goes out and comes on. If it has not gone out after 15 minutes, switch the oven off. Switch off at once if you see smoke, smell burning, or anything worries you.
    .why = At so low a setting the light goes out early in a sound oven. If it never does, the heat is not cut.

question-lamp_watch_fan = Could you watch the small front light from cold with the fan function, for up to 20 minutes?
    .how = The oven is cold and empty, and you stay with it. Choose the fan with its heat, at 180 degrees. Switch on and start the clock at once. Note each time when the small light goes out or comes on. Switch off at once if you see smoke, smell burning, or anything worries you.
    .why = With a dead heater at the back the light stays on and the air stays cool.

question-thermometer_kind = Have you a thermometer that is made for ovens?
    .how = It says so on it, or in its booklet. A fever, meat or glass thermometer is not for this, and can break. One that hangs or stands in the oven must not get wet, and most begin at 50 degrees, so it is used without a check.
    .why = With one we can compare the real heat with the setting.
    .hanging_or_standing = Yes, one that hangs or stands in the oven. It must not get wet
    .hanging_or_standing-words = hanging | standing | hangs | stands | oven thermometer | round one | dial
    .digital_with_cable = Yes, a digital one with a cable for the oven
    .digital_with_cable-words = digital | with a cable | probe with cable | cable
    .waterproof_one = Yes, another one for ovens, and its booklet says that it is waterproof
    .waterproof_one-words = waterproof | it is waterproof | may get wet | can get wet
    .other_kind = Only another kind
    .other_kind-words = other | another kind | meat | fever | glass | infrared
    .none_here = No
    .none_here-words = no | none | have not | don't have one

question-thermometer_check = Would you check the thermometer in water first? You need not.
    .how = Water with ice in it is at 0 degrees, boiling water near 100. Ice is the safer way. Only the metal tip may get wet, never the joint of the cable or the display.
    .why = If it reads wrong, we can put its readings right.
    .with_ice = Yes, I have ice
    .with_ice-words = ice | with ice | yes | i have ice
    .boiling_water = I have no ice, but I could boil water
    .boiling_water-words = no ice | boil | boiling | boiling water
    .no_check = No, I will use it as it is
    .no_check-words = no | no check | as it is | without

question-thermometer_in_ice = What does the thermometer read in ice and water?
    .how = Fill a glass with ice, add cold water and stir well for a minute. Hold the metal tip in the middle, away from the glass, until the figures stand still. Keep the joint of the cable and the display dry. If it shows °F, type F behind the number, such as 33 F. If it reads more than 25 °C, type 25.
    .why = A thermometer that is wrong in ice is wrong in the oven.

question-height_above_sea = How high above the sea do you live?
    .how = Roughly will do. A map or a sign at the station may say it.
    .why = Water boils one degree cooler for every 300 metres.
    .low_land = Near the sea or in low land, below 250 metres
    .low_land-words = low | near the sea | by the sea | low land | coast | flat | at the sea | 0 m | 50 m | 100 m | 150 m | 200 m
    .hills = In the hills, 250 to 750 metres
    .hills-words = hills | in the hills | hilly | 250 m | 300 m | 350 m | 400 m | 450 m | 500 m | 550 m | 600 m | 650 m | 700 m
    .high_land = High up, 750 to 1250 metres
    .high_land-words = high | high up | high land | 750 m | 800 m | 850 m | 900 m | 950 m | 1000 m | 1100 m | 1200 m
    .mountains = In the mountains, 1250 to 2000 metres
    .mountains-words = mountains | in the mountains | 1250 m | 1300 m | 1400 m | 1500 m | 1600 m | 1700 m | 1800 m | 1900 m | 2000 m

question-thermometer_in_boiling_water = What does the thermometer read in boiling water?
    .how = Boil water in a pan on a hob that works as it always has, never in the oven. Turn the hob down until the water only just boils and nothing splashes. Leave the pan where it stands; do not lift or hold it. Steam scalds: stand aside and wear an oven glove. Hold the metal tip in the water, away from the bottom of the pan, until the figures stand still. Keep the joint, the cable and the display off the water and the hob. Then turn the hob off. If it shows °F, type F behind the number, such as 210 F. If it reads more than 125 °C, type 125; below 60 °C, type 60.
    .why = A thermometer that is wrong in boiling water is wrong in the oven.

question-thermometer_log = Could you put the oven thermometer on the middle shelf of the cold oven, and note what it reads while the oven heats?
    .how = The oven is cold and empty but for its shelf, and you stay with it. Choose heat from above and below, at 180 degrees. Switch on and start the clock. Read through the glass with the light on, every few minutes, for up to half an hour. If you must open the door, stand aside, let the steam out first, and note it. Switch off at once if you see smoke, smell burning, or it reads far more than 180.
    .why = How fast it warms and where it settles tells a weak heater from a control that stops too early.

question-bread_tray = Could you bake nine slices of white bread on the wire shelf, and compare their tops and undersides?
    .how = You stay with the oven the whole time. Put the slices straight on the wire shelf in the middle of the oven, three by three, without a tray. Choose heat from above and below, at 200 degrees, never the grill. Switch off when the tops are mid-brown, after 25 minutes at the latest. Let all of it get cold with the oven off. Then look at each slice, top and underside.
    .why = Which side and which corner stays pale tells which heater or which air is weak.
