-- One row per complaint that no word of the tables explains, most frequent first.
select lower(trim(complaint_text)) as words, count(*) as times, min(appliance_type) as appliance_type, min(job_id) as example
from jobs
where complaint_kind = 'other' and trim(complaint_text) <> ''
group by lower(trim(complaint_text))
order by times desc, words
limit 2000
