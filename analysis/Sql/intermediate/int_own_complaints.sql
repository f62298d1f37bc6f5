-- One row per complaint, as typed, that says a frequent phrase of the shop's own; with the kind that the phrase became, or
-- the one that the owner gave it.
with answered as (
    select r.words, min(r.complaint_kind) as complaint_kind
    from review_complaints as r
    semi join complaint_kinds using (complaint_kind)
    group by r.words
    having count(distinct r.complaint_kind) = 1
)
select t.words, t.complaint_kind as own_kind, coalesce(a.complaint_kind, t.complaint_kind) as complaint_kind
from own_complaint_texts as t
join own_phrases as p using (complaint_kind)
left join answered as a on a.words = p.words
order by t.words
