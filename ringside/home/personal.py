"""Every field that leads to a person, and what becomes of it: what a person takes away and what is deleted.

A test holds this list against the models; a new field that leads to an account or a person needs a line here.

Not among them, since it is a bare name: `entries.entry.handler` is in the owner's file, and goes with the old addresses
where it is no owner's name (`entries/handlers.py`).
"""

# Books are kept for years after the show: how many is for the law of the country in which the show's club keeps them.
BOOKS = "in the person's file; stays with the name and without the address, since the law asks for a show's books"
STAMP = "who did it, for the show's records: empty once the account is gone"

# "room.model.field" of every link to an account or a person.
LEADS_TO_A_PERSON: dict[str, str] = {
    "people.person.account": "in the person's file; forgotten with the address, the name stays in results",
    "dogs.ownership.person": "in the person's file with the dog; stays, since results name the owner",
    "shows.role.account": "in the person's file; given up before the account can be deleted",
    "shows.showbreed.judge": "a judge's name stands in the results and stays",
    "shows.showbreed.awards_judged_by": "a judge's name stands in the results and stays",
    "shows.showclass.judged_by": "a judge's name stands in the results and stays",
    "shows.appointment.judge": "a judge's name stands in the results and stays",
    "results.final.judge": "a judge's name stands in the results and stays",
    "entries.entryrequest.account": "in the person's file; deleted with the account",
    "entries.entryrequest.decided_by": STAMP,
    "entries.proof.sent_by": "in the person's file; the copy is deleted",
    "entries.prooftick.by": STAMP,
    "entries.consent.person": "in the person's file; that there was one stays, withdrawn and without the address",
    "entries.consent.recorded_by": STAMP,
    "entries.groupentry.account": "in the person's file; the group and its name stay in the catalogue",
    "fees.membership.person": "in the person's file; stays with the name, since what was charged follows from it",
    "fees.payment.person": BOOKS,
    "fees.invoice.person": BOOKS,
    "fees.feechange.by": STAMP,
    "fees.payment.by": STAMP,
    "fees.payment.struck_by": STAMP,
    "fees.invoice.by": STAMP,
    "photos.photo.uploaded_by": "in the person's file; photos are deleted with their files",
    "photos.steadiness.account": "in the person's file; deleted with the account",
    "home.share.made_by": "in the person's file; the link is withdrawn",
    "home.reader.given_by": "in the person's file; deleted, with the address of whoever was let read",
    "home.correctionrequest.asked_by": "in the person's file; deleted, the correction itself stays",
    "home.correctionrequest.closed_by": STAMP,
    "home.claimcode.used_by": "in the person's file; empty once the account is gone",
    "core.auditline.who": STAMP,
    "entries.entryfile.uploaded_by": STAMP,
    "ring.pairing.made_by": STAMP,
    "ring.edit.by": STAMP,
    "ring.edit.judge": "a judge's name stands under what was signed and stays",
    "results.paperclass.judge": "in the person's file; a judge's name and signed page stay: results rest on them",
    "results.paperclass.typed_by": STAMP,
    "results.paperawards.judge": "in the person's file; a judge's name and signed page stay: results rest on them",
    "results.paperawards.typed_by": STAMP,
    "results.critique.judge": "a judge's name stands under the critique and stays",
    "results.publication.by": STAMP,
    "results.awardspublication.by": STAMP,
    "results.daychange.by": STAMP,
    "results.report.by": STAMP,
    "results.correction.by": STAMP,
    "results.awardcorrection.by": STAMP,
    "notices.notice.account": "in the person's file; deleted with the account",
    "papers.paperrun.started_by": STAMP,
}
