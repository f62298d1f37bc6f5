-- One row per appliance, or job of an unknown appliance, with the build date that the owner gave.
select coalesce(u.unit_id, r.job_id) as unit_key, min(r.made_from) as made_from, max(r.made_to) as made_to
from review_builds as r
join int_job_units as u using (job_id)
where r.made_from is not null
group by coalesce(u.unit_id, r.job_id)
order by unit_key
