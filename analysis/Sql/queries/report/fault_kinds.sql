-- One row per kind of contradiction in the data.
select fault_kind, count(*) as faults, min_by(message, (subject, message)) as example
from data_faults
group by fault_kind
order by faults desc, fault_kind
