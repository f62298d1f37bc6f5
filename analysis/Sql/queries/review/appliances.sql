-- One row per appliance type that no table knows, most frequent first.
select appliance_type, count(*) as times, min(job_id) as example
from jobs
anti join known_appliance_types using (appliance_type)
where appliance_type is not null
group by appliance_type
order by times desc, appliance_type
