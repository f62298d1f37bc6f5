-- One row per kind that the shop's own frequent phrases became, added to the kinds that an answer may name.
insert into complaint_kinds by name
select distinct complaint_kind
from own_phrases
anti join complaint_kinds using (complaint_kind)
