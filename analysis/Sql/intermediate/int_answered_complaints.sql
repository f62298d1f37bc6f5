-- One row per job whose complaint only the owner's answers explain, not the tables of words.
select j.place, j.opened_on, first(r.complaint_kind order by length(r.words) desc, r.words, r.complaint_kind) as complaint_kind
from int_job_rows as j
join (from review_complaints semi join complaint_kinds using (complaint_kind)) as r on contains(lower(j.complaint_text), r.words)
where j.complaint_kind = 'other'
group by j.place, j.opened_on
