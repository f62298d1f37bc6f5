-- One row per job that stands twice, or whose age contradicts its basis or its build interval.
select job_id, 'stands twice' as fault from jobs group by job_id having count(*) > 1
union all
select job_id, 'age and basis disagree' from jobs where (age_years is null) <> (age_basis in ('unknown', 'several date codes'))
    or (age_basis = 'unknown') <> (age_chance is null) or age_least_years > age_most_years or age_years < 0
union all
select job_id, 'build interval runs backwards' from jobs where made_from > made_to
union all
select job_id, 'closing day and what it rests on disagree' from jobs where (closed_on is null) <> (closing_basis in ('open', 'unknown'))
