-- Spreads the appliances over 40 families of 8 brands, and gives every job a complaint and one fitted part of one of two suppliers.
update units set model_family = 'F' || (hash(unit_id) % 40), brand = 'B' || (hash(unit_id) % 8), made_from = installed_on, made_to = installed_on;

update jobs set
    model_family = 'F' || (hash(unit_id) % 40),
    brand = 'B' || (hash(unit_id) % 8),
    complaint_kind = 'complaint_' || (hash(job_id) % 12);

insert into job_parts (job_id, line, part_number, part_basis, fitted_number, component, quantity, supplier, source_file, source_line)
select job_id, 1, main_component, 'exact', main_component, main_component, 1, 'S' || (hash(job_id) % 2), 'made', 1
from jobs;
