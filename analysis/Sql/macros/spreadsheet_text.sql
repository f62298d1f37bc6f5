-- A macro that puts an apostrophe before text a spreadsheet would take for a formula.
create or replace macro spreadsheet_text(cell) as
    case when regexp_matches(cell, '^[=+\-@\t\r\n]') then '''' || cell else cell end
