-- One row per answer of the owner that could not be followed, and why.
with known_components as (
    select component from int_component_roles
),
families as (
    select model_family from int_listed_models
    union
    select model_family from int_model_matches where family_is_learned
),
number_answers as (
    select
        'review-part-numbers.csv' as list,
        typed as subject,
        concat_ws('|', supplier, typed_key) as asked,
        answer,
        answer_key,
        source_file,
        source_line
    from review_part_numbers
    union all
    select 'review-collisions.csv', subject, concat_ws('|', fault_kind, subject_key), answer, answer_key, source_file, source_line
    from review_collisions
    where fault_kind in ('alias_of_two_parts', 'part_number_collision')
),
unknown_numbers as (
    select a.list, a.source_file, a.source_line, a.subject, a.answer, 'is in no list of parts; write one that is, new, or ignore' as why
    from number_answers as a
    anti join int_answered_part_numbers as n using (source_file, source_line)
    where a.answer_key is not null
),
model_answers as (
    select 'review-models.csv' as list, model_key as subject, answer, answer_key, source_file, source_line from review_models
    union all
    select 'review-collisions.csv', subject, answer, answer_key, source_file, source_line
    from review_collisions
    where fault_kind = 'model_number_collision'
),
unknown_models as (
    select
        a.list, a.source_file, a.source_line, a.subject, a.answer,
        'is no model of the model list and no family; add it to the list, or write ignore' as why
    from model_answers as a
    where a.answer_key not in (select model_key from int_listed_models)
        and (a.list = 'review-collisions.csv' or a.answer not in (select model_family from families))
),
unknown_families as (
    select 'review-collisions.csv', source_file, source_line, subject, answer, 'is none of the families that the model list names for this model'
    from review_collisions as r
    where fault_kind = 'model_in_two_families'
        and not exists (
            select 1 from staged_models as m
            where m.model_key = r.subject_key and m.model_family = r.answer
        )
),
other_words as (
    select 'review-components.csv', source_file, source_line, description, component, 'is no component of components.csv and none of your own'
    from review_components
    where component not in (select component from known_components)
    union all
    select 'review-appliances.csv', source_file, source_line, appliance_type, answer, 'is no appliance type of the tables'
    from review_appliances
    where answer not in (select appliance_type from known_appliance_types)
    union all
    select 'review-complaints.csv', source_file, source_line, words, complaint_kind, 'is no complaint kind of complaint-words.csv'
    from review_complaints
    where complaint_kind not in (select complaint_kind from complaint_kinds)
    union all
    select 'review-outcomes.csv', source_file, source_line, outcome_word, outcome, 'is no outcome; write one of those listed in README.txt'
    from review_outcomes
    where outcome_word not in (select outcome_word from int_answered_outcomes)
        and outcome_word in (select outcome_word from review_outcomes group by outcome_word having count(distinct outcome) = 1)
    union all
    select 'review-serials.csv', source_file, source_line, job_id, answer, 'is no build year or month; write 2017 or 2017-04'
    from review_builds
    where made_from is null
    union all
    select 'review-date-codes.csv', source_file, source_line, date_code, answer, fault
    from review_date_codes
    where fault is not null
),
-- the same question answered in two ways on two rows: neither is followed further than the other
answered_twice as (
    select list, source_file, source_line, subject, answer, 'is not the only answer to this row; leave one'
    from (
        select list, asked, subject, answer, source_file, source_line from number_answers
        union all select 'review-models.csv', model_key, model_key, answer, source_file, source_line from review_models
        union all select 'review-components.csv', description, description, component, source_file, source_line from review_components
        union all select 'review-complaints.csv', words, words, complaint_kind, source_file, source_line from review_complaints
        union all select 'review-outcomes.csv', outcome_word, outcome_word, outcome, source_file, source_line from review_outcomes
        union all select 'review-families.csv', learned_family, learned_family, model_family, source_file, source_line from review_families
        union all select 'review-date-codes.csv', date_code, date_code, lower(answer), source_file, source_line from review_date_codes
        union all select 'review-serials.csv', job_id, job_id, answer, source_file, source_line from review_builds
    )
    qualify count(distinct answer) over (partition by list, asked) > 1
),
together as (
    from unknown_numbers
    union all from unknown_models
    union all from unknown_families
    union all from other_words
    union all from answered_twice
)
select
    list,
    source_file,
    source_line,
    subject,
    '''' || min(answer) || ''' ' || min(why) || '.' as message
from together
group by list, source_file, source_line, subject
order by list, source_file, source_line
