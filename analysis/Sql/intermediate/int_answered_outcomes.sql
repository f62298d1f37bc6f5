-- One row per word of the shop's own for an outcome whose meaning the owner told.
select outcome_word, min(outcome) as outcome
from review_outcomes
semi join known_outcomes using (outcome)
group by outcome_word
having count(distinct outcome) = 1
order by outcome_word
