-- One row per age band: first day of age inside, and first day beyond (null: no end). Ages before the build day count
-- as the first band.
select
    age_band,
    band_order,
    from_days,
    lead(from_days) over (order by band_order) as to_days
from (values
    ('0-2', 1, -36525),
    ('2-4', 2, 730),
    ('4-6', 3, 1461),
    ('6-8', 4, 2191),
    ('8-10', 5, 2922),
    ('10-13', 6, 3652),
    ('13+', 7, 4748)
) as bands(age_band, band_order, from_days)
order by band_order
