-- One row per frequent phrase of the shop's complaints that no table reads.
with calls as (
    select o.own_kind, o.complaint_kind, count(*) as calls, min(j.complaint_text) as example
    from int_job_rows as j
    join int_own_complaints as o on o.words = lower(trim(j.complaint_text))
    where j.complaint_kind = 'other'
    group by o.own_kind, o.complaint_kind
)
select p.words, c.complaint_kind, c.calls, c.example
from own_phrases as p
join calls as c on c.own_kind = p.complaint_kind
order by c.calls desc, p.words
