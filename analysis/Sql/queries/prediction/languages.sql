-- One row per language in which the job logs are written.
select distinct unnest(string_split(languages, ' ')) as language
from loads
where kind = 'jobs' and languages is not null
order by language
