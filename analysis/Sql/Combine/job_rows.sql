-- One row per job: its winning row without the free text, with the complaint kind the owner's answers add.
-- of a job told on several rows, one part each, the first speaks for the job
with first_places as (
    select row_key as job_id, min(source_order::bigint << 32 | source_line) as place
    from row_fates
    where kind = 'jobs' and fate = 'loaded'
    group by row_key
),
kept as (
    select j.*, f.place
    from staged_jobs as j
    join first_places as f on f.place = (j.source_order::bigint << 32 | j.source_line)
),
worded as (
    select k.place, first(r.complaint_kind order by length(r.words) desc, r.words, r.complaint_kind) as complaint_kind
    from kept as k
    join (from review_complaints semi join complaint_kinds using (complaint_kind)) as r on contains(lower(k.complaint_text), r.words)
    where k.complaint_kind = 'other'
    group by k.place
)
select k.* exclude (complaint_text, complaint_kind), coalesce(w.complaint_kind, k.complaint_kind) as complaint_kind
from kept as k
left join worded as w using (place)
