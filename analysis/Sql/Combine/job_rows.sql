-- One row per job: its winning row, with the complaint kind the owner's answers add.
with kept as (
    select j.*
    from staged_jobs as j
    join row_fates as f using (source_order, source_line)
    where f.kind = 'jobs' and f.fate = 'loaded'
    -- of a job told on several rows, one part each, the first speaks for the job
    qualify row_number() over (partition by j.job_id order by j.source_order, j.source_line) = 1
),
worded as (
    select k.job_id, first(r.complaint_kind order by length(r.words) desc, r.words, r.complaint_kind) as complaint_kind
    from kept as k
    join (from review_complaints semi join complaint_kinds using (complaint_kind)) as r on contains(lower(k.complaint_text), r.words)
    where k.complaint_kind = 'other'
    group by k.job_id
)
select k.* exclude (complaint_kind), coalesce(w.complaint_kind, k.complaint_kind) as complaint_kind
from kept as k
left join worded as w using (job_id)
