-- One row: jobs that count as finished without a closing day, by what says so, and jobs of which nothing says.
select
    count(*) filter (where closing_basis = 'status') as by_status,
    count(*) filter (where closing_basis = 'outcome') as by_outcome,
    count(*) filter (where closing_basis = 'row') as by_row,
    count(*) filter (where closing_basis = 'unknown') as not_told
from jobs
