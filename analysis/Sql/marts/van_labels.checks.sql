-- One row per label that two vans have.
select van, 'label of two vans' as fault from van_labels group by van having count(*) > 1
