#!/usr/bin/env python3
"""Who stands better, and why: explain.py FEN"""
import sys

import assay


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    try:
        explanation = assay.Explainer().explain(sys.argv[1])
    except ValueError as fault:
        sys.exit(f"explain: {fault}")
    print(explanation["summary"])
    for reason in explanation.get("reasons", []):
        print(f"  {reason.get('valueCp', 0):+5d} cp for White: "
              f"{reason['text']}")
    for plan in explanation.get("plans", []):
        print(f"        plan: {plan['text']}")


if __name__ == "__main__":
    main()
