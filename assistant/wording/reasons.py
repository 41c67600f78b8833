"""Why a store can't be used, in words."""

from assistant.errors import StoreUnreadable
from assistant.wording.locale import Wording


def reason_in_words(error: StoreUnreadable, wording: Wording) -> str:
    return wording.say(f"store-{error.code}", detail=error.detail)
