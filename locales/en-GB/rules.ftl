# Mistakes in a folder of rules, for whoever edits it.

rules-did_you_mean = ; did you mean “{ $nearest }”?
rules-found_text = “{ $found }”
rules-found_nothing = nothing
rules-found_block = a block of keys
rules-found_list = a list

rules-no_folder = found no such folder, expected a folder of rules
rules-file_missing = found no such file, expected it in every folder of rules
rules-folder_missing = found no such folder, expected it in every folder of rules
rules-folder_unreadable = found a folder that can't be read ({ $reason }), expected a folder of rule files
rules-not_a_folder = found something that isn't a folder, expected a folder of rule files
rules-not_a_file = found something that isn't a file, expected a text file
rules-unknown_entry = found { $found }, expected only: { $valid }
rules-file_too_large = found a file of more than { $most } bytes, expected a small text file
rules-file_unreadable = found a file that can't be read ({ $reason }), expected a text file
rules-not_a_yaml_file = found another ending, expected a file name that ends in “.yaml”
rules-file_name_not_an_id = found the file name { $found }, expected small letters, digits and single underscores, a letter first, at most 31 in all
rules-not_utf8 = found a byte that isn't UTF-8, expected a file saved as UTF-8
rules-character_not_allowed = found the character { $found } ({ $name }), expected only ordinary spaces, line ends and characters that can be seen
rules-not_yaml = found something that isn't YAML ({ $reason }), expected keys, colons and lists that line up
rules-tab = found a tab, expected spaces
rules-colon_not_expected = found a colon where none can stand, expected the key to line up with those around it, and quotation marks around a text with a colon in it
rules-never_closed = found a quotation or a bracket that is never closed, expected its closing mark
rules-marks_needed = found a text that begins with { $found }, expected quotation marks around it
rules-no_colon = found a line without a colon, expected “key: value”
rules-comma_missing = found neither a comma nor a closing bracket, expected one of them
rules-does_not_fit = found something that doesn't fit what stands before it, expected keys and list items that line up, and quotation marks around a text as a whole
rules-empty_file = found an empty file, expected keys with their values
rules-second_document = found a second document (“---”), expected one in a file
rules-too_deep = found blocks nested more than { $most } deep, expected fewer
rules-alias = found an alias (“*”), expected the thing itself, or quotation marks around a text that begins with “*”
rules-tag = found a tag ({ $found }), expected plain values: put a text that begins with “!” in quotation marks
rules-key_not_text = found a block or a list in the place of a key, expected a word
rules-key_twice = found the key { $found } again (first in line { $first }), expected each key once

rules-missing_key = found no “{ $key }”, expected it here
rules-unknown_key = found the key “{ $key }”, expected one of: { $valid }
rules-not_in_list = found { $found }, expected one of: { $valid }
rules-not_greater_than_equal = found { $found }, expected { $bound } or more
rules-not_less_than_equal = found { $found }, expected { $bound } or less
rules-not_a_number = found { $found }, expected a number
rules-not_a_whole_number = found { $found }, expected a whole number
rules-not_true_or_false = found { $found }, expected “true” or “false”
rules-not_a_day = found { $found }, expected a day such as 2026-03-31
rules-not_text = found { $found }, expected a word or a sentence
rules-no_value = found nothing, expected a value
rules-not_an_id = found { $found }, expected small letters, digits and single underscores, a letter first
rules-id_too_long = found { $found }, expected at most 31 characters
rules-not_a_block = found { $found }, expected a block of keys
rules-not_a_list = found { $found }, expected a list
rules-too_few_entries = found { $count ->
    [0] no entry
    [one] 1 entry
   *[other] { $count } entries
 }, expected at least { $least }
rules-not_a_pair = found another number of entries, expected two

rules-assumed_without_range = found an assumed number without a range, expected “range: [lowest, highest]”
rules-value_outside_range = found a value outside its own range, expected it within
rules-not_a_percentage = found a percentage below 0 or above 100, expected one between
rules-wrong_unit = found the unit { $found }, expected “{ $wanted }”
rules-never_or_always = found 0 % or 100 %, expected a percentage between: nothing is ever impossible or certain
rules-not_above_zero = found nothing or less than nothing, expected a number above 0
rules-below_zero = found less than nothing, expected 0 or more
rules-below_one = found less than 1, expected 1 or more
rules-not_a_count = found something else, expected a whole number from 1 on
rules-prices_missing = found no price for { $missing }, expected one for each
rules-thresholds_not_rising = found thresholds of danger that don't rise, expected “danger_asked_above”, “dangerous_above”, “stop_above” in rising order
rules-hardly_any_sound = found base rates that add up to { $total } %, expected { $most } % at most: some ovens that people ask about have nothing wrong
rules-pair_says_nothing = found neither “together” nor “shows”, expected at least one of them
rules-pair_of_two_habits = found two habits, expected at least one fault: two habits are never weighed together
rules-pair_excluded = found two causes of which one excludes the other, expected two that can be there together
rules-excludes_itself = found the cause itself, expected another one
rules-said_when_among_several = found “said_when”, expected it only where several answers can be given
rules-words_missing = found no percentage for { $missing }, expected one for every word
rules-listed_twice = found { $found } twice, expected each entry once
rules-choices_for_kind = found “choices” and “kind” that don't go together, expected choices with the kinds “choice” and “choices”, and only there
rules-number_for_kind = found “number” and “kind” that don't go together, expected “number” with the kind “number”, and only there
rules-kind_cannot_report = found an observable, expected none: only the kinds “choice” and “number” can report one
rules-question_or_finding = found both “question” and “finding” or neither, expected one of them
rules-one_way_to_hold = found a condition that says too much or too little, expected for a question one of: is, is_one_of, includes, or bounds; for a finding none of them
rules-when_or_any_of = found both “when” and “any_of” or neither, expected one of them
rules-habit_mended_by_householder = found “kind” and “mended_by” that don't go together, expected “householder” for habits, and for them only
rules-cause_shows_nothing = found neither “effect” nor “shows”, expected at least one of them
rules-habit_needs_remedy = found another remedy, expected for a habit one of “act” and “advice”, for a fault neither
rules-found_above_of = found a “found” above its “of”, expected at most as many as “of”

rules-no_observable = found the observable { $found }, expected one that exists
rules-no_cause = found the cause { $found }, expected one that exists
rules-no_question = found the question { $found }, expected one that exists
rules-no_finding = found the finding { $found }, expected one that exists
rules-no_sign = found the danger sign { $found }, expected one that exists
rules-no_act = found the act { $found }, expected one from the closed list in acts.yaml
rules-no_advice = found the advice { $found }, expected one from advice.yaml
rules-no_step = found the step { $found }, expected one from steps.yaml
rules-no_part = found the part { $found }, expected one from ovens.yaml
rules-no_effect = found the effect { $found }, expected one from effects/
rules-volts_not_in_order = found the nominal voltage outside its limits, expected it from lowest to highest
rules-no_function = found the function { $found }, expected one from ovens.yaml
rules-no_state = found the state { $found }, expected one of the observable's: { $valid }
rules-no_answer = found the answer { $found }, expected one that the question can have: { $valid }

rules-likelihoods_missing = found no likelihood for { $missing }, expected one for each
rules-rest_twice = found “rest” twice, expected it once at most
rules-sum_not_one = found likelihoods that add up to { $total } %, expected 100 %
rules-words_far_from_whole = found likelihoods that add up to { $total } %, expected about 100 %, or “rest” for one of them: words are stretched by a quarter at most
rules-nothing_left = found likelihoods that add up to { $total } %, expected less than 100 % beside “rest”
rules-never_impossible = found a likelihood of 0 %, expected a small one: no answer rules a cause out
rules-report_of_nothing = found “{ $key }” without “observable”, expected both or neither
rules-mistakes_or_table = found both “mistakes” and “table” or neither, expected one of them beside “observable”
rules-mistakes_out_of_range = found { $total } %, expected a rate of mistakes above 0 % and below 50 %
rules-mistakes_are_not_the_rest = found “rest”, expected another word or a percentage
rules-answer_means_nothing = found an answer that means no state, expected “means: [state]”
rules-state_never_meant = found no answer that means { $missing }, expected one for every state
rules-last_band_open = found “below” in the last band, expected the last band without it
rules-bands_not_rising = found limits that don't rise, expected in every band but the last a “below” higher than the one before
rules-least_above_most = found a “least” that isn't below “most”, expected it below
rules-bounds_on_no_number = found bounds on “{ $question }”, expected a question whose kind is number
rules-includes_on_one_choice = found “includes” on “{ $question }”, expected a question whose kind is choices
rules-is_on_several_choices = found { $found } with “is” or “is_one_of”, expected “includes”: “{ $question }” can have several answers at once
rules-is_on_a_number = found { $found } with “is” or “is_one_of”, expected bounds such as “at_least”: the answer to “{ $question }” is a number
rules-one_answer_expected = found a list, expected one answer
rules-lines_unreadable = found something else, expected a list of lines as they are written down at the oven, such as ["0:00 lit", "7:40 out", "15:00 end"]
rules-several_answers_expected = found no list of answers, expected one: the question can have several answers at once
rules-name_taken_by_question = found the name { $found } of a question, expected one of the finding's own
rules-name_reserved = found { $found }, expected another name: the program uses this one itself
rules-required_missing = found no { $found }, expected it: the program can't do without
rules-none_at_all = found no entry, expected at least one
rules-never_reported = found an observable that no question reports, expected a question with “observable: { $name }”
rules-effect_of_nothing = found an effect that no cause names, expected a cause with “effect: { $name }”
rules-run_for_measurement = found “run” or “measures” without the other, or at a question that measures nothing, expected both at lamp_log, temperature_log and browning, and only there
rules-heights_for_boiling = found “height_from” and “heights” without boiling water, or boiling water without both, expected both with “water: boiling”, and only there
rules-fixed_point_of_no_degrees = found “fixed_point” at another question, expected it with the kind “number” in degrees_celsius
rules-checks_no_thermometer = found the question { $found }, expected one of the kind temperature_log
rules-one_way_to_change = found no change, or several, expected one of times, by and to
rules-shares_for_outcomes = found another number of shares for { $found }, expected one for each outcome
rules-no_way = found { $found }, expected a way of heating that the oven model has: { $valid }
rules-no_parameter = found { $found }, expected a parameter of the oven model
rules-not_foreseen = found nothing simulated for { $name } from the rules as they are, expected it: run “ovenside rules foresee”
rules-foreseen_of_nothing = found { $found }, expected only questions that measure something
rules-test_begins_unsound = found { $found } as the first choice of a test, expected the one that means { $state }: what a sound oven reads
rules-no_test = found the question { $found }, expected one with “stage: tests”
rules-kind_never_told = found a kind of oven that no answer tells, expected a choice “{ $name }” of a question with “kind: choice” and “tells: kind”
rules-never_shown = found an observable that no cause shows, expected a cause with “{ $name }” under “shows”
rules-more_than_sessions = found { $found }, expected { $most } at most: there were no more sessions in this group
rules-example_not_fires = found that the finding stays quiet under this example, expected it to fire
rules-example_not_stays_quiet = found that the finding fires under this example, expected it to stay quiet

rules-limit_malformed_id = found “{ $id }”, expected at most 64 small letters, digits and underscores
rules-limit_repeated_id = found “{ $id }” twice, expected it once
rules-limit_concludes_a_given_key = found a finding named like the question “{ $key }”, expected another name
rules-limit_negation_cycle = found findings that rule each other out in a circle ({ $through }), expected no circle
rules-limit_too_many_antecedents = found { $found } conditions, expected at most { $most }
rules-limit_too_many_alternatives = found { $found } alternatives, expected at most { $most }
rules-limit_band_out_of_range = found { $found }, expected at most { $most }
rules-limit_order_out_of_range = found { $found } findings before this one, expected at most { $most }
rules-limit_bound_not_usable = found “{ $bound }” { $found } on “{ $key }”, expected an ordinary number
rules-limit_bound_too_fine = found “{ $bound }” { $found } on “{ $key }”, expected at most three decimal places
rules-limit_too_many_keys = found { $found } things that can be known, expected at most { $most }
rules-limit_too_many_rules = found { $found } rules after all alternatives, expected at most { $most }
rules-limit_condition_in_too_many_rules = found { $found } rules with one condition on “{ $key }”, expected at most { $most }
rules-limit_too_many_codes_of_key = found { $found } answers of “{ $key }” in conditions, expected at most { $most }
rules-limit_too_many_comparisons_of_key = found { $found } comparisons of “{ $key }”, expected at most { $most }
rules-limit_same_hash = found “{ $first }” and “{ $second }”, which the rule engine can't tell apart, expected another name for one
rules-other = found { $found }, expected something else ({ $reason })
answer-erased = (erased)
rules-message_missing = found no words “{ $message }” in the language { $lang }, expected them in its folder of locales

rules-schema_written = The schemas are in { $where }.
rules-schema_not_written = The schemas couldn't be written: { $reason }.

rules-foreseen_written = { $count ->
    [one] What one measurement may come to was simulated and written to { $where }.
   *[other] What { $count } measurements may come to was simulated and written to { $where }.
}
rules-foreseen_not_written = It could not be written: { $reason }.
