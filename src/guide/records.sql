-- Queries over many records, one text for any engine that knows plain SQL. Each begins with its title; no name that is given
-- to a sum is that of a column, which some engines would take for it.

-- What each complaint turned out to be
select tree, cause_name, count(*) as repairs, sum(weight) as jobs
from repairs
where counts and weight > 0
group by tree, cause_name
order by jobs desc, tree, cause_name
limit 20;

-- How jobs end
select tree, outcome, count(*) as complaints
from jobs
where counts
group by tree, outcome
order by tree, outcome;

-- Minutes that checks took, against the tree's
select check_name, count(*) as times, avg(took) as mean_took, avg(planned) as mean_planned
from findings
where counts and took is not null and not proof
group by check_name
having count(*) >= 3
order by times desc, check_name
limit 20;

-- Repairs that did not help
select cause_name,
  sum(case when helped then 0 else 1 end) as failed,
  count(*) as tried,
  sum(case when helped then 0 else parts_count end) as parts_fitted
from repairs
where counts and helped is not null
group by cause_name
having sum(case when helped then 0 else 1 end) > 0
order by failed desc, cause_name
limit 20;

-- Jobs proven by person and month
select substr(opened, 1, 7) as month, who, count(*) as complaints,
  sum(case when outcome = 'proven' then 1 else 0 end) as proven
from jobs
where counts and complaint = 1
group by substr(opened, 1, 7), who
order by month, who
limit 24;

-- How often the step that was asked is the step that was done
select who, step, count(*) as steps, sum(case when followed then 1 else 0 end) as as_asked
from decisions
where counts and stands and asked <> 'none'
group by who, step
order by who, step;

-- Where the time of proven jobs went
select m.spent_on as spent_on, count(*) as jobs, sum(m.minutes) as total
from minutes m
join jobs j on j.session = m.session
where m.counts and j.complaint = 1 and j.outcome = 'proven'
group by m.spent_on
order by m.spent_on;

-- Sessions of which nothing counts
select apart, count(*) as sessions
from jobs
where apart is not null and (complaint = 1 or complaint is null)
group by apart
order by apart;

-- Readings, from the least to the most
select check_name, unit, count(*) as readings, min(reading) as least, max(reading) as most
from findings
where counts and reading is not null
group by check_name, unit
order by readings desc, check_name, unit
limit 20;
