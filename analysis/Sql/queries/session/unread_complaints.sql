-- One row per complaint that no table reads, with the number of calls that say it, most frequent first.
select lower(trim(complaint_text)) as words, count(distinct row_hash) as times
from staged_jobs
where complaint_kind = 'other' and trim(complaint_text) <> ''
group by words
order by times desc, words
limit 100000
