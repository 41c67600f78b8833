question-oven_is_off = Is the oven off now? How did you switch it off?
    .how = Its clock and lights should be dark. Do not switch it on again to check. After a fire or a smell of gas, touch no switch and answer from outside.
    .why = We go on only when the oven is safely off.
    .off_at_switch = Off at its switch on the wall
    .off_at_switch-words = wall switch | at the wall | cooker switch | switch | socket | at the switch | off at the wall | wall | i turned it off at the wall
    .off_at_breaker = Off at its breaker in the fuse box
    .off_at_breaker-words = breaker | fuse box | consumer unit | at the board | i turned off the breaker | off at the fuse box | off at the breaker
    .off_at_main = Off at the main switch
    .off_at_main-words = main switch | mains | everything is off | whole house | main | the main switch | off at the mains
    .off_by_plug = Off, for its plug is out already
    .off_by_plug-words = i pulled the plug | plug is out | unplugged | unplugged it | i unplugged it | plug | pulled the plug | the plug is out
    .still_on = No, it is still on
    .still_on-words = no | still on | on | left it alone | can't reach it | could not | no luck | it is still on | i had to leave it alone | i can't | not yet | nope

question-what_goes_wrong = What goes wrong with the oven?
    .how = Think of the last few times. You need not try it now.
    .why = It tells us which questions to ask first.
    .nothing_comes_on = Nothing comes on at all
    .nothing_comes_on-words = dead | nothing comes on | no power | completely dead | nothing works | it's dead | nothing at all | no lights | won't turn on | won't come on
    .no_heat = The light or clock comes on, but there is no heat
    .no_heat-words = no heat | stays cold | won't heat | not heating | cold | it stays cold | no heat at all | it won't heat up | doesn't heat up
    .too_cold_or_slow = Food takes too long or is not done
    .too_cold_or_slow-words = too cold | slow | takes too long | takes ages | undercooked | lukewarm | raw in the middle | takes forever | takes longer | it takes longer | takes much longer | never done | not cooking properly | not done | slow to cook | too slow
    .too_hot = Food gets too brown or burns
    .too_hot-words = too hot | burns | burnt | too brown | overcooked
    .pale_below = The bottom of food stays pale or soft
    .pale_below-words = pale bottom | soggy bottom | pale underneath | bottom not done | soft base
    .pale_on_top = The top of food stays pale
    .pale_on_top-words = pale top | top stays pale | not brown on top | top not done
    .one_side = One side browns more than the other
    .one_side-words = one side | uneven | unevenly | lopsided | left side | right side | back burns
    .grill_weak = The grill is weak or does not work
    .grill_weak-words = grill | no grill | grill is weak | grill not working | toast
    .fan_trouble = The fan does not run, scrapes or blows cold
    .fan_trouble-words = fan | fan is noisy | fan stopped | fan not working | blows cold
    .light_or_clock = The small light or the clock behaves oddly
    .light_or_clock-words = light | clock | display | timer | lamp | orange light
    .door_trouble = The door or its seal does not fit well
    .door_trouble-words = door | seal | door gap | hinge | gasket
    .trips_electricity = It makes the electricity go off
    .trips_electricity-words = trips | fuse | breaker | electricity goes off | it trips | it keeps tripping | tripping | keeps tripping | it tripped | rcd | fuse blows | blows the fuse | trips the electrics
    .a_worry = I only wonder whether something is normal
    .a_worry-words = is it normal | just wondering | noise | a question | steam | i just want to know if its normal | i just want to know if it's normal | is this normal | just want to know | i only wonder | only wondering | is that normal
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
    .this_week-words = today | yesterday | this week | few days | days
    .this_month = For some weeks
    .this_month-words = weeks | some weeks | this month | last month | a month
    .longer = For longer
    .longer-words = months | years | longer | ages | a long time | always

question-which_dishes = Does it happen with one dish or with everything?
    .how = Think of two or three different things you cooked.
    .why = If only one dish fails, the oven itself is often fine.
    .one_dish = With one dish, or one kind of dish
    .one_dish-words = one dish | only cakes | only bread | just one | only pizza | one thing
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
    .steady-words = steady | normal | fine | nothing | no | blink once | they stay the same | stay the same | the same | no change | they don't change | nothing happens | they are fine | they're fine | nope | nah | no they don't
    .bright_and_dim = They go bright and dim
    .bright_and_dim-words = bright and dim | flicker | dim | brighter | change | they change | they flicker | flickering | go dim | they go dim

question-ever_tripped = Did the oven ever make the electricity go off?
    .how = Ask others at home too. Do not try it out.
    .why = If it ever did, we will not ask you to run a test with a hot oven.
    .never = Never
    .never-words = never | no | not once | nope | nah | nevr | never ever | no never | it never did | it never has | never tripped | no it didn't | no it never did | not that i know of
    .once_long_ago = Once, long ago
    .once_long_ago-words = once | long ago | years ago | once long ago
    .lately = Yes, lately
    .lately-words = yes | lately | recently | this week | again | often | yeah | yep

question-which_appliance = What kind of oven is it?
    .how = The booklet or the label inside the door frame says so. A gas hob can sit over an electric oven.
    .why = We can only help with electric ovens.
    .electric_oven = An electric oven
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

question-clock_on_oven = Does the oven have a clock?
    .how = Look at the front panel. A clock that can end the cooking by itself can also hold back the heat.
    .why = A clock or timer can keep the oven cold although nothing is broken.
    .clock_with_start_and_end = A clock that can start or end the cooking
    .clock_with_start_and_end-words = clock with timer | programmer | auto clock | can end cooking
    .clock_not_sure_what_it_does = A clock, but I do not know what it can do
    .clock_not_sure_what_it_does-words = a clock | just a clock | clock not sure | digital clock | yes | yes a clock | yeah | yep
    .only_a_minute_minder = Only a timer that rings
    .only_a_minute_minder-words = only a timer | minute minder | it rings | ringer | bell
    .no_clock = No clock and no timer
    .no_clock-words = no clock | no | none | no timer | nope | nah | no it hasn't

question-lamp_means = What does the small light on the front panel show?
    .how = Not the light inside the oven. The booklet says what the small light means.
    .why = On some ovens this light shows when the oven is heating. Then it can tell us a lot.
    .lit_while_heating = It is lit while the oven heats and goes out when it is hot
    .lit_while_heating-words = lit while heating | goes out when hot | heating light | on while heating
    .lit_when_hot = It comes on when the oven is hot enough
    .lit_when_hot-words = comes on when hot | lit when ready | ready light | on when hot
    .only_power = It is lit whenever the oven is on
    .only_power-words = always on | power light | lit when on | on all the time
    .no_lamp = There is no such light
    .no_lamp-words = no light | no | none | there isn't one | hasn't got one | nope | nah | no lamp

question-whose_oven = Whose oven is it?
    .how = In a rented home it may be the landlord's.
    .why = It decides who should be told first.
    .own = Mine, or my family's
    .own-words = mine | own | ours | my own | i own it
    .rented = It belongs to a rented home
    .rented-words = rented | landlord | landlord's | renting | tenant
    .someone_else = Somebody else's
    .someone_else-words = someone else | a friend's | my mother's | neighbour | not mine

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
    .off_and_cold-words = yes | off and cold | cold | i will look | it is cold
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

question-timer_sign = Is the oven waiting for a set time?
    .how = Look at the clock. The letter A or the word "auto" means that it waits. A small hand or pot often means by hand.
    .why = An oven that waits for a set time stays cold, and nothing is broken.
    .by_hand = It works by hand, I see no A or "auto"
    .by_hand-words = by hand | hand | no a | manual | no auto | no | nah | nope
    .waits_for_time = I see the letter A, or "auto"
    .waits_for_time-words = auto | letter a | the letter a | automatic | yes

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
    .cooks_well-words = well | good | fine | normal | cooks well
    .cooks_weakly = It cooks, but weakly
    .cooks_weakly-words = weak | weakly | slow | not so well | a bit
    .blows_cold = The fan blows, but there is no heat
    .blows_cold-words = cold | blows cold | no heat | only air | nothing

question-grill_browns = How does the grill brown toast?
    .how = Think of the last time. Some grills work only with the door as the booklet says.
    .why = It tells us about the heater in the roof.
    .browns_well = It browns well
    .browns_well-words = well | good | fine | normal | browns well
    .browns_weakly = It browns weakly, or only in part
    .browns_weakly-words = weak | weakly | slow | only in part | only the middle | only the edges
    .no_grill_heat = It does not get hot
    .no_grill_heat-words = cold | no heat | not at all | dead | nothing

question-bottom_heat_alone = With bottom heat alone, how does the underside look?
    .how = Bottom heat alone is the picture with just one line at the bottom. If you never use it, say "not sure".
    .why = If the same heater works here, the heater itself is whole.
    .browned = Browned as it should be
    .browned-words = brown | browned | fine | good | normal | brown enough | nicely brown | it's fine | ok | as it should
    .a_bit_pale = A bit pale
    .a_bit_pale-words = a bit pale | pale | light | not brown enough | a little pale | bit pale | it's pale | pale ish | stays pale | it stays pale
    .white_or_raw = White, soft or raw
    .white_or_raw-words = white | raw | soggy | soft | not done at all | wet | it stays white | stays white | totally white | still white | it's white | all white | doughy | uncooked | it stays raw | not cooked

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
    .as_meant-words = as meant | fine | normal | no | paler | good
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
    .slower-words = slower | slow | longer | takes longer | twice as long
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

question-how_hot_it_starts = Is the oven hot before your food goes in?
    .how = Think of the dish that fails. Many ovens need ten to fifteen minutes.
    .why = Cakes, bread and pastry need a hot oven from the start.
    .hot_first = Yes, I let it get hot first
    .hot_first-words = yes | hot first | preheated | i preheat | heated | yeah | yep
    .from_cold = No, or only for a few minutes
    .from_cold-words = no | from cold | cold | few minutes | straight in | nah | nope

question-recipe_for_fan = Which temperature do you set?
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
    .middle_or_as_recipe-words = middle | as recipe | centre | as it says
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
    .never-words = never | no | not that i know | nope | nah | nevr | never ever | no never | not that i know of
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
    .off_first_time-words = off | first time | it is off | yes | down
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
