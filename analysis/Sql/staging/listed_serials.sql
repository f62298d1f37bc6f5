-- One row per staged job, without a serial of one or two characters that no register lists.
create or replace view staged_jobs as
select j.* replace (case when j.serial_is_short is null or u.serial_key is not null then j.serial_key end as serial_key)
from staged_jobs_as_typed as j
left join (select distinct serial_key from staged_units where serial_is_short) as u on u.serial_key = j.serial_key
