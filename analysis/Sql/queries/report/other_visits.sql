-- One row per reason of a visit that is no failure: how many jobs had it.
select visit_reason, count(*) as jobs
from jobs
where visit_reason <> 'failure'
group by visit_reason
order by jobs desc, visit_reason
