-- One row per job behind no alarm, or alarm whose jobs do not add up.
select a.month, a.appliance_type, a.component, a.model_family, a.kind, any_value(a.jobs) as jobs, count(j.job_id) as found
from trend_alarms as a
left join trend_alarm_jobs as j using (month, appliance_type, component, model_family, kind)
group by all
having found <> any_value(a.jobs)
