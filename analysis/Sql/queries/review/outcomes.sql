-- One row per word for an outcome that no table knows, most frequent first. jobs_with_part: jobs that count as repaired
-- because a part is on them; the others count as unknown.
select
    lower(trim(j.outcome_text)) as outcome_word,
    count(*) as times,
    count(c.place) as jobs_with_part,
    min(j.job_id) as example
from int_job_rows as j
left join int_job_components as c using (place)
anti join int_answered_outcomes as r on r.outcome_word = lower(trim(j.outcome_text))
where j.outcome_text is not null
group by lower(trim(j.outcome_text))
order by times desc, outcome_word
