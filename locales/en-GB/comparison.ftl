# What differs between two folders of rules, and which cases end otherwise, for whoever edits the rules.

cases-no_folder = { $where } is no folder of cases.
cases-none = There is no case in { $where }: a case is a YAML file with “answers”.
cases-unreadable = { $where } can't be read: { $reason }.
cases-not_yaml = { $where } isn't YAML.
cases-no_answers = { $where } is no case: it has no “answers”, each a word or a list of words.

compare-entries = What differs in the rules, from { $before } to { $after }:
compare-entries_none = The rules say the same in { $before } and in { $after }.
compare-kind = { $kind }: { $changes }
compare-added = added { $names }
compare-removed = removed { $names }
compare-changed = changed { $names }
compare-changed_file = changed
compare-no_cases = There are no cases beside { $after }; name a folder of them with --cases.
compare-working = cases
compare-verdict = verdict
compare-first = first
compare-probability = first
compare-stop = stop
compare-questions = questions
compare-tests = tests
compare-kit = kit
compare-refused = not taken
compare-move = { $field }  { $before } → { $after }
compare-nothing = none
compare-count = { $moved } of { $cases } cases in { $where } move.
