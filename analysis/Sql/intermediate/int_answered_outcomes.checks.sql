-- One row per word for an outcome that is there twice or lacks its meaning.
select outcome_word, 'is there twice' as fault
from int_answered_outcomes
group by outcome_word
having count(*) > 1
union all
select outcome_word, 'has no meaning'
from int_answered_outcomes
where outcome_word is null or outcome is null
