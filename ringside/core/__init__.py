"""The shared floor: refusals with a reason, the audit line, access, pages' common context."""
