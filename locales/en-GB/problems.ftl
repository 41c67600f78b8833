# What couldn't be taken, and what would do.

problem-did_you_mean = Did you mean “{ $nearest }”?
problem-not_started = This session hasn't started. Send a “start” first.
problem-unknown_question = There is no question “{ $found }”.
problem-unknown_choice = “{ $found }” is not one of the choices.
problem-choice_expected = One choice's id is wanted, as text.
problem-choices_expected = A list of one or more choices' ids is wanted.
problem-none_with_others = “None of these” can't go with another choice. Type only the others.
problem-number_expected = A number is wanted.
problem-unknown_unit = “{ $found }” is not a unit we can use here. Use one of: { $valid }.
problem-unit_without_number = The unit “{ $unit }” makes no sense here: this question takes no number.
problem-number_out_of_range = { $unit ->
    [degrees_celsius] Please give a number from { $least } to { $most } in °C. If it is in °F, type F behind it.
   *[other] Please give a number from { $least } to { $most }.
}
problem-text_expected = A few words are wanted.
problem-text_too_long = That is too long. Please use at most { $most } characters.
problem-nothing_to_withdraw = There is no answer to “{ $question }” to take back.
problem-unknown_role = There is no role “{ $found }”. Use one of: { $valid }.
problem-unknown_region = There is no region “{ $found }”. Use one of: { $valid }.
problem-unknown_sign = There is no danger sign “{ $found }”.
problem-name_taken = There is a session of that name already.
problem-code_taken = That access code is taken already.
problem-message_repeated = That message was stored before.
problem-event_repeated = That event was stored before.
problem-message_id_reused = The message id “{ $message_id }” was used before for something else. Use a new one.
problem-language_incomplete = That language can't be used: { $reason }.
problem-not_unicode = The text holds half characters that can't be stored.
problem-not_finite = The number isn't finite.

problem-empty_line = The line is empty. One JSON object a line is wanted.
problem-line_too_long = The line is longer than { $most } bytes.
problem-not_utf8 = The line isn't UTF-8 text.
problem-not_json = The line isn't JSON: { $reason }.
problem-not_an_object = The line isn't a JSON object.
problem-field_missing = The field “{ $field }” is missing.
problem-field_wrong = The field “{ $field }” can't be that. Wanted: { $wanted }.
problem-unknown_field = There is no field “{ $field }” in a message of this type.
problem-unknown_type = There is no message type “{ $found }”. Use one of: { $valid }.
problem-unknown_language = There is no language “{ $found }”. Use one of: { $valid }.
problem-not_for_role = The question “{ $question }” is not for the role “{ $role }”. It asks for more than that role may do.
problem-role_differs = This session was started with the role “{ $found }”.
problem-session_moved_on = Somebody else answered in this session meanwhile. Look at the new state and send it again.
problem-store = The session can't be stored or read: { $reason }. Nothing of this message was kept.

# Why a store can't be used.

store-access_denied = access is denied
store-another_program = it is a database of another program
store-a_folder = it is a folder, not a file
store-closed = it was closed
store-damaged = the file is damaged
store-disk_error = the disk reports an error
store-disk_full = the disk is full
store-gone = the file is gone
store-later_form = an entry was written by a later version of this program ({ $detail })
store-later_version = it was written by a later version of this program ({ $detail })
store-locked = another program has locked it
store-no_write_ahead_log = this disk can't hold a write-ahead log
store-not_a_database = it is not a database
store-not_a_kind_of_store = that is no kind of store; give sqlite:PATH, a path, or memory:
store-not_a_path = that is not a path
store-not_a_time = a time in it can't be read ({ $detail })
store-not_opened = it can't be opened
store-read_only = it may only be read
store-slashes_after_scheme = a path follows “sqlite:” directly, without slashes of its own
store-system_says = { $detail }
store-traces_left = the session was erased, but traces may be left until the next opening
store-unknown_form = an entry is in a form that this program doesn't know ({ $detail })
problem-store_unusable = The store { $where } can't be used: { $reason }. Nothing was changed.
problem-lines_expected = A list of lines is wanted, such as 7:40 out.
problem-nothing_written_down = Nothing is written down yet. Please give at least one line, such as 7:40 out.
problem-too_many_lines = That is more than { $most } lines. Please leave some out.
problem-time_unreadable = “{ $found }” has no time that we can read. Please write minutes and seconds first, such as 7:40 out.
problem-time_goes_back = { $then } comes after { $first } in your list, but before it on the clock. Please put the times in order.
problem-watched_too_long = That is longer than { $most } hours. Please give minutes and seconds since you switched on.
problem-watched_too_short = That is less than { $least } minutes. Please watch a little longer.
problem-lamp_line_unknown = “{ $found }” is not something the light does. Please write out, on, or end.
problem-lamp_first_unknown = The light did not change, so please say what it did all the time, and until when: 0:00 on, 30:00 end.
problem-lamp_change_missed = At { $since } and at { $at } the light did the same. Perhaps you missed a change. Please leave one of the two out, or add what was between.
problem-lamp_changes_too_close = The light seems to change within two seconds, so that was not noted. Please leave out what was a slip.
problem-too_few_readings = One reading tells too little. Please give at least { $least }.
problem-two_readings_at_once = Two readings have the same time. Please leave one out.
problem-degrees_unreadable = “{ $found }” has no degrees that we can read. Please write such as 143 C or 290 F.
problem-reading_impossible = { $found } cannot be the heat in a kitchen's oven. Please read it again, in C or in F.
problem-tray_line_unknown = “{ $found }” is not a row of bread. Please write top or underside, and then three rows of three figures from 0 to 5, such as top 333 332 221.
problem-tray_side_twice = That side is given twice: { $side }.
problem-tray_side_missing = Please give both sides: top, and underside.
problem-tray_sides_differ = A slice has one side only. Please give both, or put a dash for both.
problem-tray_empty = There is no bread on the shelf. Please give at least one slice.
problem-nothing_to_measure = There is nothing to write down for “{ $question }”.
problem-measuring_not_begun = The clock does not run yet for “{ $question }”.
problem-not_fit_to_measure = That cannot be measured now.
