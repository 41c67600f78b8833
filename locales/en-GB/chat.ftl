# The chat's own words. Lists of typed words are separated by “|”; the first of each list is the one shown.

words-why = why | why do you ask | why that
words-how = how | how do i look | how to look | show me how | help
words-not_sure = not sure | unsure | don't know | i don't know | dont know | dunno | no idea | not certain | ?
words-skip = skip | later | not now | pass
words-back = back | go back | previous
words-change = change | change an answer | correct | i made a mistake
words-stop = stop | leave | quit | exit | bye
words-yes = yes | y | yeah | yep | yes please | that one | right | correct
words-and = and
words-about = about | around | roughly | maybe | approximately | nearly

chat-welcome = Ovenside: find out what your electric oven needs.
chat-caution = A few short questions, most of them just talking. Never take a panel off and never pull the oven out. First, your safety.
chat-hint_choice = Type a number, or say it in your own words.
chat-hint_choices = Type the number. If several fit, type them all, like “1, 3”.
chat-hint_danger = Type the number.
chat-hint_number = Type a number ({ $unit }).
chat-hint_text = Type it in your own words.
chat-helper_words = You can also type: { $words }
chat-progress = { $answered } answered · now: { $care }
chat-standing = Your answer so far: { $answer }
chat-understood = Taken as: { $answer }
chat-nothing_typed = Nothing was typed. If you can't tell, type “not sure”.
chat-unclear = Sorry, I didn't catch that. Please type the number of one of the choices, or “not sure”.
chat-unclear_perhaps = I'm not certain. Do you mean “{ $candidate }”? Type “yes”, or the number of another.
chat-unclear_between = I'm not certain which you mean. Perhaps: { $candidates }? Please type the number.
chat-number_unclear = I need a number here ({ $unit }), like 12. Or type “not sure”.
chat-exact_needed = This is about safety, so I don't want to guess. Please type the number, or “not sure”.
chat-heard = What you typed may mean danger. First this:
chat-danger_not_skipped = This one is about safety and can't be skipped. If you can't tell, type “not sure”.
chat-nothing_open = There is no open question just now.
chat-nothing_before = There is nothing before this.
chat-answers_heading = Your answers so far:
chat-change_which = Type the number of the answer to change. Press Enter to leave all as it is.
chat-likely_heading = What it may be:
chat-because_heading = Because:
chat-change_heading = This would change it:
chat-tips_heading = Good to know:
chat-after_verdict = Type “change” to correct an answer, “why” to hear more, or press Enter to leave.
chat-why_verdict = It follows from what you told us. Type “change” to see your answers.
chat-saved_as_you_go = Every answer is saved at once. To come back later: ovenside resume { $code }
chat-saved = Your answers are saved.
chat-resume_with = To go on later, type: ovenside resume { $code }
chat-resume_again = To go on later, use the same code, or type: ovenside resume
chat-nothing_saved = Nothing was answered yet, so nothing was saved.
chat-still_on_help = Keep everybody away from it. If you can't switch it off safely, call { $network_line } or an electrician. If you see flames or thick smoke, get out and call { $emergency_line }. If you smell gas, touch no switch, go outside and call { $gas_line }.
chat-keep_off = Keep the oven off until somebody qualified has looked at it.
chat-turn_off = If the oven is on for a test, please turn it off now.
chat-welcome_back = Welcome back. You were here:
chat-still_off = You told us of a danger sign before. Please leave the oven off.
chat-engine_naive = Note: the rule engine can't be used on this machine; the plain evaluator does its work.
answer-not_sure = not sure
answer-skipped = skipped

sessions-none = There are no saved sessions.
sessions-line = { $id }  begun { $begun }, { $events } entries, { $state }
sessions-open = open
sessions-finished = finished
sessions-erased = Session { $id } and everything in it was erased.
sessions-unknown = There is no such session. “ovenside sessions list” shows what is there.
sessions-code_unknown = There is no session with that code. Please check it: sixteen letters and digits.
sessions-nothing_to_resume = There is no session to go on with. Type “ovenside” to begin one.
store-unusable = The store { $where } can't be used: { $reason }. Nothing was changed.
rules-sound = { $count } rule files read, no mistakes.
rules-count = { $count ->
    [one] 1 mistake.
   *[other] { $count } mistakes.
}
