"""What was measured in turns, told beside one of the ways."""
import statistics


def tell(rates, base, base_name):
    """Prints each way's positions a second, and its share of the base's in the
    same round: medians and ranges. `rates`: way to a rate a round."""
    for way, seen in rates.items():
        shares = [rate / one for rate, one in zip(seen, rates[base])]
        print(f"{way}: {statistics.median(seen):.0f} positions/s "
              f"[{min(seen):.0f}..{max(seen):.0f}], "
              f"{statistics.median(shares):.2f} of {base_name} "
              f"[{min(shares):.2f}..{max(shares):.2f}]")
