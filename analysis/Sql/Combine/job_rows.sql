-- One row per job: what its winning row says of appliance and days, with the complaint kind the owner's answers add.
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
select
    k.place,
    k.job_id,
    k.opened_on,
    k.closed_on,
    k.serial_key,
    k.place_key,
    k.appliance_type,
    k.brand,
    k.model_raw,
    k.model_key,
    k.model_confusable,
    k.made_on_from,
    k.made_on_to,
    k.serial_candidates,
    k.serial_fault,
    k.purchased_on,
    k.age_stated_years,
    coalesce(w.complaint_kind, k.complaint_kind) as complaint_kind,
    k.source_order,
    k.source_file,
    k.source_line
from kept as k
left join worded as w using (place)
