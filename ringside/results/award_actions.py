"""Publishing a breed's awards as the judge signed them."""

from collections.abc import Iterator

from django.db import transaction

from ringside.core import audit
from ringside.core.denied import NotNow
from ringside.core.sentences import apart
from ringside.people.models import Account
from ringside.results.actions import require_all_sent
from ringside.results.awards import BreedAwards, awards_of
from ringside.results.models import AwardGiven, AwardsPublication
from ringside.shows.access import require
from ringside.shows.models import ShowBreed


@transaction.atomic
def publish_awards(*, by: Account, show_breed: ShowBreed) -> AwardsPublication:
    """Makes a breed's signed awards readable. NotNow says what is still missing; a finding holds nothing back."""
    show = show_breed.show
    require(by, show, "publish-results")
    ShowBreed.objects.select_for_update().get(pk=show_breed.pk)
    [found] = awards_of([show_breed])
    if found.state == "published":
        raise NotNow("The awards of this breed are published already.")
    if found.missing:
        raise NotNow("These awards cannot be published yet. Missing: {missing}.", missing=apart(found.missing))
    require_all_sent(show_breed.appointed.ring)
    rows = AwardGiven.objects.bulk_create(_rows(found))
    publication = AwardsPublication.objects.create(show_breed=show_breed, by=by)
    audit.record(who=by, doing="publish awards", show_id=show.pk, about=f"breed:{show_breed.pk}", awards=len(rows))
    return publication


def _rows(found: BreedAwards) -> Iterator[AwardGiven]:
    for line in found.lines:
        if line.state != "undecided":
            yield AwardGiven(
                show_breed=found.card.breed,
                award=line.offered.award.code,
                sex=line.offered.sex or "",
                entry=line.entry,
                withheld=line.state == "withheld",
            )
